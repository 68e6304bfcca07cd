using System.Text.RegularExpressions;
using LabPipeline.Conventions.Tests.TSql;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Schema;

namespace LabPipeline.Conventions.Tests;

/// <summary>The scripts for SQL Server's administrator name what there is, and analysts get every view and no table.</summary>
public sealed partial class SetupScriptTests
{
    private static readonly SqlSchema Schema =
        NameReview.Migrate(Migrator.ScriptsOf(DialectName.SqlServer).Select(script => (script.Name, script.Text))).Schema;

    [Fact]
    public void Scripts_WhenResolved_NameOnlyWhatTheSchemaHas()
    {
        var scripts = Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "Setup", "SqlServer"), "*.sql");

        Assert.NotEmpty(scripts);
        Assert.Empty(scripts.SelectMany(path => NameReview.Check(Path.GetFileName(path), File.ReadAllText(path), Schema).Faults));
    }

    [Fact]
    public void Analysts_WhenGivenTheirRole_ReadEveryViewAndNothingElse()
    {
        var text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Setup", "SqlServer", "2-roles.sql"));

        Assert.Equal(
            Schema.Tables.Select(table => table.Name).Where(name => name.StartsWith("v_", StringComparison.Ordinal)).Order(StringComparer.Ordinal),
            ToAnalyst().Matches(text).Select(match => match.Groups["what"].Value).Order(StringComparer.Ordinal));
        Assert.Equal(ToAnalyst().Count(text), AnyToAnalyst().Count(text));
    }

    [Fact]
    public void Writers_WhenGivenTheirRole_DeleteWhatStatementsDeleteAndNothingElse()
    {
        var text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Setup", "SqlServer", "2-roles.sql"));

        Assert.Equal(
            Statements.ForSqlServer().SelectMany(statement => Deleted().Matches(statement.Text)).Select(match => match.Groups["what"].Value).Distinct().Order(StringComparer.Ordinal),
            ToWriter().Matches(text).Select(match => match.Groups["what"].Value).Order(StringComparer.Ordinal));
    }

    [GeneratedRegex(@"^delete from (?<what>\w+)", RegexOptions.Multiline)]
    private static partial Regex Deleted();

    [GeneratedRegex(@"^grant delete on (?<what>\w+) to lab_writer;", RegexOptions.Multiline)]
    private static partial Regex ToWriter();

    [GeneratedRegex(@"^grant select on (?<what>\w+) to lab_analyst;", RegexOptions.Multiline)]
    private static partial Regex ToAnalyst();

    [GeneratedRegex(@"^(grant|alter role).*lab_analyst", RegexOptions.Multiline)]
    private static partial Regex AnyToAnalyst();
}
