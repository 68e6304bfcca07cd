namespace LabPipeline.Intake.Reading;

/// <summary>One thing in a file that cannot be read.</summary>
/// <remarks>
/// <c>Code</c>: stable name from <see cref="FaultCatalogue"/>.
/// <c>Line</c>: counted from 1; 0 when it is about the whole file.
/// <c>Column</c>: counted from 1; 0 when it is about the whole line.
/// <c>Found</c>: shortened, control characters made visible; empty when nothing was found.
/// <c>Advice</c>: what to do about it.
/// </remarks>
public sealed record Fault(string Code, int Line, int Column, string? ColumnName, string Found, string Expected, string Advice)
{
    /// <summary>One sentence for a person.</summary>
    public string Describe(string fileName) => FaultCatalogue.Describe(this, fileName);
}
