namespace LabPipeline.Conventions.Tests.TSql;

/// <summary>A name in a statement that means nothing in the schema.</summary>
internal sealed record NameFault(string File, int Line, string Name, string Problem)
{
    public override string ToString() => $"{File} line {Line}: {Name} {Problem}";
}
