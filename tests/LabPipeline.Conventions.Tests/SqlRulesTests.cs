using System.Reflection;
using Dapper;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Schema;
using Microsoft.Data.Sqlite;
using Microsoft.SqlServer.TransactSql.ScriptDom;

namespace LabPipeline.Conventions.Tests;

/// <summary>Every statement is used, and prepares on a migrated SQLite warehouse; what SQL Server reads is resolved by <see cref="SqlServerNamesTests"/>.</summary>
public sealed class SqlRulesTests
{
    [Fact]
    [Shows(60)]
    public void Statements_WhenEmbedded_AreEachLoadedByAStore()
    {
        var unused = new List<string>();
        foreach (var assembly in ProductAssemblies.All.Values)
        {
            var loaded = Statements.Loaded(assembly).Select(statement => statement.Name).ToHashSet(StringComparer.Ordinal);
            unused.AddRange(SqlText.FilesOf(assembly).Keys
                .Where(file => !loaded.Contains(Statements.NameOf(file)))
                .Select(file => $"{assembly.GetName().Name}: {file}"));
        }

        Assert.Empty(unused);
    }

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
                foreach (var statement in ProductAssemblies.All.Values.SelectMany(Statements.Loaded))
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

    // Dapper writes "in @list" out as "in (@list1, @list2)".
    private static string ExpandLists(string text) => System.Text.RegularExpressions.Regex.Replace(text, @"\bin (@\w+)", "in ($1)");

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
