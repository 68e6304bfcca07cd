using FsCheck;
using FsCheck.Xunit;
using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Comparisons;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.Comparisons;

public sealed class CompactLettersTests
{
    public static TheoryData<string> Datasets => [.. ReferenceMeans.Datasets];

    /// <summary>G_compact_letters.csv: letters of another program, highest mean first.</summary>
    [Theory]
    [MemberData(nameof(Datasets))]
    public void Of_OnTheDataSets_GivesTheLettersOfTheCheckFile(string dataset)
    {
        var means = ReferenceMeans.Load(dataset);
        foreach (var (procedure, set) in new[]
        {
            ("Tukey HSD", AllPairs.Tukey(means, 0.05)),
            ("Fisher LSD", AllPairs.Adjusted(means, PValueAdjustment.None, 0.05)),
        })
        {
            var letters = CompactLetters.Of(means, set, LetterOrder.HighestFirst);
            var rows = ReferenceTable.Load("G_compact_letters.csv").Rows
                .Where(row => row.Text("dataset") == dataset && row.Text("procedure") == procedure).ToList();
            Assert.Equal(means.Count, rows.Count);
            Assert.All(rows, row => Assert.Equal(row.Text("letters"), letters[means.IndexOf(row.Text("level"))]));
        }
    }

    [Fact]
    public void Of_WhenLowestIsBest_StartsThere()
    {
        double[] means = [5, 1, 9];
        Assert.Equal(["b", "c", "a"], CompactLetters.Of(means, (_, _) => true, LetterOrder.HighestFirst));
        Assert.Equal(["b", "a", "c"], CompactLetters.Of(means, (_, _) => true, LetterOrder.LowestFirst));
    }

    [Fact]
    public void Of_WhenThePatternHasGaps_LeavesGapsInTheLetters()
    {
        // Means 4 > 3 > 2 > 1 with unequal SEDs: only (4, 2) and (3, 1) differ. By hand: {4,3}, {4,1}, {3,2}, {2,1}.
        double[] means = [4, 3, 2, 1];
        var letters = CompactLetters.Of(means, (i, j) => (i, j) is (0, 2) or (1, 3), LetterOrder.HighestFirst);
        Assert.Equal(["ab", "ac", "cd", "bd"], letters);
    }

    [Fact]
    public void Of_OnAnOrdinaryRun_KeepsTheLettersContiguous()
    {
        // Six means one apart, differences above 2 significant: runs of three.
        double[] means = [6, 5, 4, 3, 2, 1];
        var letters = CompactLetters.Of(means, (i, j) => Math.Abs(means[i] - means[j]) > 2, LetterOrder.HighestFirst);
        Assert.Equal(["a", "ab", "abc", "bcd", "cd", "d"], letters);
    }

    [Fact]
    public void Of_WhenSomeLettersAreRedundant_SweepsThemOut()
    {
        // Insert and absorb leaves the triangle {0,2,4} of this pattern although its three sides lie in other triangles.
        bool Together(int i, int j) => (i, j) is (0, 1) or (0, 2) or (1, 2) or (2, 3) or (2, 4) or (3, 4) or (0, 4) or (0, 5) or (4, 5);
        double[] means = [6, 5, 4, 3, 2, 1];
        var letters = CompactLetters.Of(means, (i, j) => !Together(i, j), LetterOrder.HighestFirst);
        Assert.Equal(["ab", "a", "ac", "c", "bc", "b"], letters);
    }

    /// <summary>The defining law: two means share a letter exactly when they are not shown to differ; every mean has a letter.</summary>
    [Property(MaxTest = 300)]
    public void Of_ForAnyPattern_SharesALetterExactlyWhenNotDifferent(PositiveInt size, int seed, bool lowest)
    {
        var count = 1 + (size.Get % 11);
        var random = new Random(seed);
        var density = random.NextDouble();
        double[] means = [.. Enumerable.Range(0, count).Select(_ => (double)random.Next(5))];
        var different = new bool[count, count];
        for (var i = 0; i < count; i++)
        {
            for (var j = i + 1; j < count; j++)
            {
                different[i, j] = random.NextDouble() < density;
            }
        }

        var letters = CompactLetters.Of(means, (i, j) => different[i, j], lowest ? LetterOrder.LowestFirst : LetterOrder.HighestFirst);
        Assert.All(letters, text => Assert.NotEmpty(text));
        for (var i = 0; i < count; i++)
        {
            for (var j = i + 1; j < count; j++)
            {
                Assert.Equal(!different[i, j], letters[i].Intersect(letters[j]).Any());
            }
        }

        var best = lowest ? means.Min() : means.Max();
        Assert.Contains(Enumerable.Range(0, count), index => means[index] == best && letters[index].StartsWith('a'));
    }

    [Fact]
    public void Of_WhenLettersRunOut_SaysSo()
    {
        var error = Assert.Throws<NotEstimableException>(() => CompactLetters.Of([.. Enumerable.Range(0, 53).Select(i => (double)i)], (_, _) => true, LetterOrder.HighestFirst));
        Assert.Contains("more than 52 letters", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_OnBadInput_Refuses()
    {
        Assert.Throws<ArgumentException>(() => CompactLetters.Of([], (_, _) => true, LetterOrder.HighestFirst));
        Assert.Throws<ArgumentException>(() => CompactLetters.Of([1, double.NaN], (_, _) => true, LetterOrder.HighestFirst));
        var means = ReferenceMeans.Load("PlantGrowth");
        var some = AgainstControl.Dunnett(means, "ctrl", 0.05, Science.Statistics.Distributions.Sidedness.TwoSided);
        var error = Assert.Throws<ArgumentException>(() => CompactLetters.Of(means, some, LetterOrder.HighestFirst));
        Assert.Contains("Found 2 comparisons of 3 means; letters need all 3 pairs.", error.Message, StringComparison.Ordinal);
    }
}
