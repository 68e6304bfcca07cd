namespace LabPipeline.Conventions.Tests.TSql;

/// <summary>Tables and views as the migrations leave them.</summary>
internal sealed class SqlSchema
{
    private readonly Dictionary<string, SchemaTable> _tables = new(StringComparer.Ordinal);

    public IEnumerable<SchemaTable> Tables => _tables.Values;

    public SchemaTable? Find(string name) => _tables.GetValueOrDefault(name);

    public void Put(SchemaTable table) => _tables[table.Name] = table;

    public void Remove(string name) => _tables.Remove(name);
}
