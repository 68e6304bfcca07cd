using System.Globalization;
using System.Text.RegularExpressions;

namespace LabPipeline.Conventions.Tests;

/// <summary>docs/specs/reliability.md names for every way to fail the tests that show what holds, or says why there is none.</summary>
/// <remarks><c>LABPIPELINE_WRITE_DOCS=1</c> writes the column of the tests anew; the others are kept.</remarks>
public sealed partial class ReliabilityTableTests
{
    private const int Rows = 82;
    private const int ShownBy = 4;

    private static readonly ILookup<int, string> Shown = ShownFailures.Tests
        .SelectMany(test => test.Failures.Select(failure => (Failure: failure, test.Test)))
        .ToLookup(shown => shown.Failure, shown => shown.Test);

    private static string Page => Path.Combine(RepositoryFolder.Root, "docs", "specs", "reliability.md");

    [Fact]
    public void Table_WhenCounted_HasEachFailureOnce() =>
        Assert.Equal(Enumerable.Range(1, Rows), Table().Select(row => NumberOf(row)));

    [Fact]
    public void Table_WhenHeldAgainstTheTests_NamesThoseOfEachRow()
    {
        var written = AsWritten();
        if (Environment.GetEnvironmentVariable("LABPIPELINE_WRITE_DOCS") == "1")
        {
            File.WriteAllText(Page, written);
        }

        Assert.Equal(written, File.ReadAllText(Page).ReplaceLineEndings("\n"));
    }

    [Fact]
    public void Tests_WhenTheyShowAFailure_NameARowOfTheTable() => Assert.Empty(Shown.Select(failure => failure.Key).Except(Enumerable.Range(1, Rows)));

    [Fact]
    public void Tests_WhenTheyShowAFailure_SayItAsTheyAreRead() => Assert.Equal(ShownFailures.Written, ShownFailures.Tests.Count(test => test.Failures.Count > 0));

    [Fact]
    public void Page_WhereItNamesATest_NamesOneThatExists() =>
        Assert.Empty(Named().Matches(AsWritten()).Select(match => match.Groups["name"].Value).Except(ShownFailures.Tests.Select(test => test.Test)));

    [Fact]
    public void Rows_WithoutATest_SayWhy() =>
        Assert.All(Table().Where(row => !Shown.Contains(NumberOf(row))), row => Assert.Matches(Reason(), row.Split('|')[ShownBy]));

    private static IEnumerable<string> Table() => File.ReadLines(Page).Where(line => NumberedRow().IsMatch(line));

    private static int NumberOf(string row) => int.Parse(row.Split('|')[1], CultureInfo.InvariantCulture);

    private static string AsWritten() =>
        string.Join('\n', File.ReadAllText(Page).ReplaceLineEndings("\n").Split('\n').Select(line => NumberedRow().IsMatch(line) ? WithTests(line) : line));

    private static string WithTests(string row)
    {
        var cells = row.Split('|');
        var tests = Shown[NumberOf(row)].Distinct().Order(StringComparer.Ordinal).Select(test => $"`{test}`").ToList();
        cells[ShownBy] = tests.Count > 0 ? $" {string.Join(", ", tests)} " : cells[ShownBy];
        return string.Join('|', cells);
    }

    [GeneratedRegex(@"^\| \d+ \|")]
    private static partial Regex NumberedRow();

    [GeneratedRegex("^ (?:Does not apply|Open): .{20,} $")]
    private static partial Regex Reason();

    [GeneratedRegex("`(?<name>[A-Z]\\w*[a-z]\\w*_\\w+)`")]
    private static partial Regex Named();
}
