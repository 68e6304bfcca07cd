using LabPipeline.Conventions.Tests.TSql;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Schema;

namespace LabPipeline.Conventions.Tests;

/// <summary>docs/data-dictionary.md describes every table, view and column that there is, once, and nothing else.</summary>
public sealed class DataDictionaryTests
{
    private const string OfTheMigrator = "schema_version";

    [Fact]
    public void Dictionary_WhenHeldAgainstTheSchema_DescribesEachColumnOnce()
    {
        var (schema, _) = NameReview.Migrate(Migrator.ScriptsOf(DialectName.SqlServer).Select(script => (script.Name, script.Text)));
        var there = schema.Tables.Where(table => table.Name != OfTheMigrator).SelectMany(table => table.Columns.Select(column => $"{table.Name}.{column}")).ToList();
        var described = SchemaMeanings.Tables.SelectMany(table => table.Columns.Select(column => $"{table.Name}.{column.Name}")).ToList();

        Assert.Empty(there.Except(described).Select(name => $"{name} is in the schema and not described"));
        Assert.Empty(described.Except(there).Select(name => $"{name} is described and not in the schema"));
        Assert.Empty(described.GroupBy(name => name).Where(group => group.Count() > 1).Select(group => $"{group.Key} is described twice"));
    }

    [Fact]
    public void Dictionary_WhenItDescribes_SaysSomething()
    {
        Assert.All(SchemaMeanings.Tables, table => Assert.True(table.Meaning.Length > 8 && table.Columns.Count > 0, table.Name));
        Assert.All(SchemaMeanings.Tables.SelectMany(table => table.Columns), column => Assert.NotEmpty(column.Meaning));
    }

    [Fact]
    public void Dictionary_WhenRead_KeepsSentencesAndSkipsOtherTables()
    {
        var table = Assert.Single(SchemaMeanings.Parse(
            """
            # Title
            ### v_one

            One row a thing.

            | column | meaning |
            |---|---|
            | a, b_mg | of `x`, in mg |

            | standing | meaning |
            |---|---|
            | in effect | counts |
            """));

        Assert.Equal(("v_one", "One row a thing."), (table.Name, table.Meaning));
        Assert.Equal([new DescribedColumn("a", "of x, in mg"), new DescribedColumn("b_mg", "of x, in mg")], table.Columns);
    }
}
