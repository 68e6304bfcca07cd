using Microsoft.SqlServer.TransactSql.ScriptDom;

namespace LabPipeline.Conventions.Tests.TSql;

/// <summary>What is known while one file is checked: the schema, tables and variables the file itself makes, and the faults found.</summary>
internal sealed class NameCheck(string file, SqlSchema schema)
{
    private readonly Dictionary<string, SchemaTable> _own = new(StringComparer.Ordinal);
    private readonly List<NameFault> _faults = [];

    public IReadOnlyList<NameFault> Faults => _faults;

    /// <summary>Variables read, without those the file declares: what code has to pass.</summary>
    public SortedSet<string> Parameters { get; } = new(StringComparer.Ordinal);

    public HashSet<string> Declared { get; } = new(StringComparer.OrdinalIgnoreCase);

    public SqlSchema Schema => schema;

    public void Own(SchemaTable table) => _own[table.Name] = table;

    public void Forget(string name) => _own.Remove(name);

    public SchemaTable? Find(string name) => _own.GetValueOrDefault(name) ?? schema.Find(name);

    public void Fault(TSqlFragment at, string name, string problem) => Fault(at.StartLine, name, problem);

    public void Fault(int line, string name, string problem) => _faults.Add(new NameFault(file, line, name, problem));

    public void Expect(NameScope scope, ColumnReferenceExpression column)
    {
        var parts = column.MultiPartIdentifier.Identifiers;
        var name = parts[^1].Value;
        var problem = parts.Count == 1 ? scope.Find(name) : scope.Find(parts[^2].Value, name);
        if (problem is not null)
        {
            Fault(column, string.Join('.', parts.Select(part => part.Value)), problem);
        }
    }
}
