using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using LabPipeline.Science.Colour;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Colour;

/// <summary>Colour differences against the 34 pairs of Sharma, Wu and Dalal 2005 (A_ciede2000_sharma2005.csv).</summary>
public sealed class ColourDifferenceTests
{
    private static readonly ViewingCondition Daylight = ViewingCondition.Of(Illuminant.D65, Observer.TenDegree);

    [Fact]
    public void DeltaE00_OnAllPublishedPairs_AgreesToOneInTenThousand()
    {
        var rows = ReferenceTable.Load("A_ciede2000_sharma2005.csv").Rows;
        Assert.Equal(34, rows.Count);
        foreach (var row in rows)
        {
            var (first, second) = Pair(row);

            // Published to four decimals; the second column was worked out with 40 digits.
            Assert.Equal(row.Number("dE00_published_4dp"), ColourDifference.DeltaE00(first, second), 1e-4);
            Assert.Equal(row.Number("dE00_computed_40digit"), ColourDifference.DeltaE00(first, second), 1e-9);
            Assert.Equal(row.Number("dE00_computed_40digit"), ColourDifference.DeltaE00(second, first), 1e-9);
            Assert.Equal(row.Number("dE76_computed"), ColourDifference.DeltaEab(first, second), 1e-9);
        }
    }

    [Fact]
    public void DeltaE00_WhenHuesAreOpposite_TakesTheFirstBranch()
    {
        // Pair 14: with atan2 a rounding error past 180 degrees a correct double program gives 4.7461.
        var (first, second) = Pair(ReferenceTable.Load("A_ciede2000_sharma2005.csv").Find("pair", "14"));

        Assert.Equal(4.8045, ColourDifference.DeltaE00(first, second), 1e-4);
    }

    [Property]
    public Property DeltaE00_OfAnyPair_IsSymmetricAndZeroOnlyForEqualColours() => Prop.ForAll(Pairs(), pair =>
    {
        var there = ColourDifference.DeltaE00(pair.First, pair.Second);
        var back = ColourDifference.DeltaE00(pair.Second, pair.First);
        return Math.Abs(there - back) < 1e-9 && double.IsFinite(there)
            && ColourDifference.DeltaE00(pair.First, pair.First) == 0
            && (there > 0 || pair.First == pair.Second);
    });

    [Property]
    public Property Polar_ThereAndBack_IsTheSameColour() => Prop.ForAll(Pairs(), pair =>
    {
        var colour = pair.First;
        var back = Cielab.FromPolar(colour.L, colour.Chroma, colour.HueDegrees, Daylight);
        return Math.Abs(back.A - colour.A) < 1e-10 && Math.Abs(back.B - colour.B) < 1e-10;
    });

    [Fact]
    public void DeltaE_WhenConditionsDiffer_Throws()
    {
        var first = new Cielab(50, 0, 0, Daylight);
        var second = new Cielab(50, 0, 0, ViewingCondition.Of(Illuminant.C, Observer.TwoDegree));

        Assert.Contains("C/2°", Assert.Throws<ArgumentException>(() => ColourDifference.DeltaE00(first, second)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => ColourDifference.DeltaEab(first, second));
        Assert.Throws<ArgumentOutOfRangeException>(() => ColourDifference.DeltaE00(first, first, kl: 0));
    }

    [Theory]
    [InlineData(DarkLimit.Below, 25)]
    [InlineData(DarkLimit.AtOrBelow, 50)]
    public void DarkChips_OnTheLimit_FollowTheStatedRule(DarkLimit rule, int expected) =>
        // Counted by hand: one of four below 55, one on it.
        Assert.Equal(expected, DarkChips.Percent([54.9m, 55.0m, 55.1m, 60m], 55m, rule).Value);

    [Fact]
    public void DarkChips_WithoutChips_IsNotEstimable()
    {
        Assert.False(DarkChips.Percent([], 55m, DarkLimit.Below).IsEstimated);
        Assert.Throws<ArgumentOutOfRangeException>(() => DarkChips.Percent([101m], 55m, DarkLimit.Below));
        Assert.Throws<ArgumentOutOfRangeException>(() => DarkChips.Percent([50m], 55m, 0));
    }

    private static (Cielab First, Cielab Second) Pair(ReferenceRow row) => (
        new(row.Number("L1"), row.Number("a1"), row.Number("b1"), Daylight),
        new(row.Number("L2"), row.Number("a2"), row.Number("b2"), Daylight));

    private static Arbitrary<(Cielab First, Cielab Second)> Pairs()
    {
        var colour = from l in Gen.Choose(0, 100)
                     from a in Gen.Choose(-80, 80)
                     from b in Gen.Choose(-80, 80)
                     select new Cielab(l, a, b, Daylight);
        return (from first in colour
                from second in colour
                select (first, second)).ToArbitrary();
    }
}
