using System.Reflection;
using Dapper;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Schema;
using Microsoft.Data.Sqlite;
using Microsoft.SqlServer.TransactSql.ScriptDom;

namespace LabPipeline.Conventions.Tests;

/// <summary>Every statement is used, parses as T-SQL, and prepares on a migrated SQLite warehouse.</summary>
public sealed class SqlRulesTests
{
    [Fact]
    public void Statements_WhenEmbedded_AreEachLoadedByAStore()
    {
        var unused = new List<string>();
        foreach (var assembly in ProductAssemblies.All.Values)
        {
            var loaded = StatementsOf(assembly).Select(statement => statement.Name).ToHashSet(StringComparer.Ordinal);
            unused.AddRange(SqlText.FilesOf(assembly).Keys
                .Where(file => !loaded.Contains(NameOf(file)))
                .Select(file => $"{assembly.GetName().Name}: {file}"));
        }

        Assert.Empty(unused);
    }

    [Fact]
    public void Statements_ForSqlServer_Parse()
    {
        var faults = new List<string>();
        foreach (var assembly in ProductAssemblies.All.Values)
        {
            foreach (var statement in StatementsOf(assembly))
            {
                faults.AddRange(ParseFaults(statement.Name, ExpandLists(statement.For(DialectName.SqlServer))));
            }
        }

        Assert.Empty(faults);
    }

    [Fact]
    public void Migrations_ForSqlServer_Parse() =>
        Assert.Empty(Migrator.ScriptsOf(DialectName.SqlServer).SelectMany(script => ParseFaults(script.Name, script.Text)));

    [Fact]
    public void Migrations_OfBothDialects_HaveTheSameNumbersAndNames() =>
        Assert.Equal(
            Migrator.ScriptsOf(DialectName.Sqlite).Select(script => script.Name),
            Migrator.ScriptsOf(DialectName.SqlServer).Select(script => script.Name));

    [Fact]
    public async Task Statements_ForSqlite_PrepareOnTheNewestSchema()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync();
        var faults = await scratch.Warehouse.ReadAsync(
            session =>
            {
                var found = new List<string>();
                foreach (var statement in ProductAssemblies.All.Values.SelectMany(StatementsOf))
                {
                    Prepare(session, statement, found);
                }

                return Task.FromResult(found);
            },
            TestContext.Current.CancellationToken);

        Assert.Empty(faults);
    }

    [Fact]
    public async Task Tables_OfBothDialects_HaveTheSameColumns()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync();
        var sqlite = await scratch.Warehouse.ReadAsync(
            async session => (await session.Connection.QueryAsync<string>(
                """
                select m.name || '.' || c.name from sqlite_schema m join pragma_table_info(m.name) c
                where m.type = 'table' and m.name not in ('schema_version', 'sqlite_sequence') order by 1
                """)).ToList(),
            TestContext.Current.CancellationToken);
        var sqlServer = Migrator.ScriptsOf(DialectName.SqlServer).SelectMany(ColumnsOf).Order(StringComparer.Ordinal);

        Assert.Equal(sqlite.Order(StringComparer.Ordinal), sqlServer);
    }

    private static void Prepare(WarehouseSession session, SqlText statement, List<string> faults)
    {
        try
        {
            using var command = ((SqliteConnection)session.Connection).CreateCommand();
            command.CommandText = ExpandLists(statement.For(DialectName.Sqlite));
            command.Prepare();
        }
        catch (SqliteException exception)
        {
            faults.Add($"{statement.Name}: {exception.Message}");
        }
    }

    private static IEnumerable<SqlText> StatementsOf(Assembly assembly) => assembly.GetTypes()
        .Where(type => !type.ContainsGenericParameters)
        .SelectMany(type => type.GetFields(BindingFlags.Static | BindingFlags.NonPublic | BindingFlags.Public))
        .SelectMany(field => field.FieldType == typeof(SqlText)
            ? [(SqlText)field.GetValue(null)!]
            : typeof(IEnumerable<SqlText>).IsAssignableFrom(field.FieldType) ? (IEnumerable<SqlText>)field.GetValue(null)! : []);

    private static string NameOf(string file) => file.Replace(".sqlite.sql", "").Replace(".sqlserver.sql", "").Replace(".sql", "");

    // Dapper writes "in @list" out as "in (@list1, @list2)".
    private static string ExpandLists(string text) => System.Text.RegularExpressions.Regex.Replace(text, @"\bin (@\w+)", "in ($1)");

    private static IEnumerable<string> ParseFaults(string name, string text)
    {
        using var reader = new StringReader(text);
        new TSql160Parser(initialQuotedIdentifiers: true, SqlEngineType.Standalone).Parse(reader, out var errors);
        return errors.Select(error => $"{name} line {error.Line}, column {error.Column}: {error.Message}");
    }

    private static IEnumerable<string> ColumnsOf(MigrationScript script)
    {
        using var reader = new StringReader(script.Text);
        var tree = new TSql160Parser(initialQuotedIdentifiers: true, SqlEngineType.Standalone).Parse(reader, out _);
        var visitor = new ColumnVisitor();
        tree.Accept(visitor);
        return visitor.Columns;
    }

    private sealed class ColumnVisitor : TSqlFragmentVisitor
    {
        public List<string> Columns { get; } = [];

        public override void Visit(CreateTableStatement node) =>
            Columns.AddRange(node.Definition.ColumnDefinitions.Select(
                column => $"{node.SchemaObjectName.BaseIdentifier.Value}.{column.ColumnIdentifier.Value}"));

        public override void Visit(AlterTableAddTableElementStatement node) =>
            Columns.AddRange(node.Definition.ColumnDefinitions.Select(
                column => $"{node.SchemaObjectName.BaseIdentifier.Value}.{column.ColumnIdentifier.Value}"));
    }
}
