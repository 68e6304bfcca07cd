using LabPipeline.Intake.Profiles;

namespace LabPipeline.Intake.Tests.Profiles;

public sealed class FileRuleTests
{
    [Theory]
    [Shows(17)]
    [InlineData("*.csv", "a.csv", true)]
    [InlineData("*.csv", "B.CSV", true)]
    [InlineData("*.csv", ".csv", true)]
    [InlineData("*.csv", "a.csv.tmp", false)]
    [InlineData("*_sugars.csv", "2026-01-14_sugars.csv", true)]
    [InlineData("*_sugars.csv", "sugars.csv", false)]
    [InlineData("run?.txt", "run7.txt", true)]
    [InlineData("run?.txt", "run.txt", false)]
    [InlineData("run?.txt", "run77.txt", false)]
    [InlineData("*a*b*", "xxaxxbxx", true)]
    [InlineData("*a*b*", "xxbxxaxx", false)]
    [InlineData("*", "", true)]
    [InlineData("a", "", false)]
    [InlineData("file.i", "FILE.I", true)]
    public void Matches_WhenNameIsGiven_ComparesWithoutCase(string pattern, string name, bool expected)
    {
        using var _ = new Text.InCulture("tr-TR");

        Assert.Equal(expected, new FileRule([pattern], Completeness.RenamedIn, null, 0).Matches(name));
    }

    // A pattern of stars must not take exponential time.
    [Fact]
    public void Matches_WhenPatternIsHostile_IsQuick() =>
        Assert.False(new FileRule([string.Concat(Enumerable.Repeat("*a", 50)) + "b"], Completeness.RenamedIn, null, 0).Matches(new string('a', 5_000)));
}
