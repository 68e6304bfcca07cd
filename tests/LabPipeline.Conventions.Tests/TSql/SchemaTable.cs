namespace LabPipeline.Conventions.Tests.TSql;

/// <summary>A table or view: its columns in order, and those an insert must give.</summary>
internal sealed record SchemaTable(string Name, IReadOnlyList<string> Columns, IReadOnlyList<string> Required)
{
    public SchemaTable With(string column, bool required) =>
        this with { Columns = [.. Columns, column], Required = required ? [.. Required, column] : Required };
}
