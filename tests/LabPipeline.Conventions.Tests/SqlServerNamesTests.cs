using System.Text.RegularExpressions;
using LabPipeline.Conventions.Tests.TSql;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Schema;

namespace LabPipeline.Conventions.Tests;

/// <summary>Every name SQL Server will read means something in the migrated schema: a typo must not reach a laboratory.</summary>
public sealed partial class SqlServerNamesTests
{
    private static readonly (SqlSchema Schema, IReadOnlyList<NameFault> Faults) Migrated =
        NameReview.Migrate(Migrator.ScriptsOf(DialectName.SqlServer).Select(script => (script.Name, script.Text)));

    [Fact]
    public void Migrations_WhenResolved_NameOnlyWhatTheyMade()
    {
        Assert.Empty(Migrated.Faults);
        Assert.Contains(Migrated.Schema.Tables, table => table.Name == "v_plot_pull");
    }

    [Fact]
    public void Statements_WhenResolved_NameOnlyWhatTheSchemaHas()
    {
        var checks = Statements.ForSqlServer().Select(statement => NameReview.Check(statement.File, statement.Text, WithVersions())).ToList();

        Assert.NotEmpty(checks);
        Assert.Empty(checks.SelectMany(check => check.Faults));
    }

    [Fact]
    public void LoaderStatements_WhenResolved_NameOnlyWhatTheSchemaAndTheirStagingHave()
    {
        foreach (var text in SqlServerFactText.All)
        {
            var staged = NameReview.Check(text.StageName, text.CreateStage + ";\n" + text.StoreStaged + "\n" + text.DropStage, Migrated.Schema);
            var given = NameReview.Check(text.StageName + " given", text.StoreGiven, Migrated.Schema);

            Assert.Empty(staged.Faults.Concat(given.Faults));
            Assert.Equal(["@fileId"], staged.Parameters);
            Assert.Equal(["@facts", "@fileId"], given.Parameters);
        }
    }

    [Fact]
    public void Statements_WhenTheyAreAPair_TakeTheSameParameters()
    {
        foreach (var files in ProductAssemblies.All.Values.Select(SqlText.FilesOf))
        {
            foreach (var (file, text) in files.Where(file => file.Key.EndsWith(".sqlserver.sql", StringComparison.Ordinal)))
            {
                var sqlite = files[file.Replace(".sqlserver.", ".sqlite.", StringComparison.Ordinal)];

                Assert.Equal(ParametersOf(sqlite), ParametersOf(text));
            }
        }
    }

    [Fact]
    public void TextColumns_OfSqlServer_CompareByCodePointAsInSqlite() => Assert.Empty(Migrator.ScriptsOf(DialectName.SqlServer)
        .SelectMany(script => script.Text.Split('\n').Select((line, index) => (line, where: $"{script.Name} line {index + 1}")))
        .Where(row => TextColumn().IsMatch(row.line) && !ByCodePoint().IsMatch(row.line))
        .Select(row => row.where));

    /// <summary>The table of versions is made by a statement of its own, before any script.</summary>
    private static SqlSchema WithVersions()
    {
        var schema = new SqlSchema();
        foreach (var table in Migrated.Schema.Tables)
        {
            schema.Put(table);
        }

        schema.Put(new SchemaTable("schema_version", ["number", "name", "checksum", "applied_at"], []));
        return schema;
    }

    private static SortedSet<string> ParametersOf(string text) => new(Parameter().Matches(text).Select(match => match.Value), StringComparer.Ordinal);

    [GeneratedRegex(@"^    (?!primary|unique|constraint|foreign)\w+\s+n?(var)?char\b")]
    private static partial Regex TextColumn();

    [GeneratedRegex(@"\bnvarchar\((\d+|max)\) collate Latin1_General_BIN2\b")]
    private static partial Regex ByCodePoint();

    [GeneratedRegex(@"@\w+")]
    private static partial Regex Parameter();
}
