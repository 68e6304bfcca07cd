using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using LabPipeline.Science.Order;
using LabPipeline.Science.Randomisation;

namespace LabPipeline.Science.Tests.Order;

/// <summary>Each bench error is made on purpose from a planned order and must be named as what it is; expected findings follow from how it was made.</summary>
public sealed class OrderComparisonTests
{
    private static readonly string[] Planned = [.. "ABCDEFGHIJKL".Select(letter => letter.ToString())];

    [Fact]
    public void Compare_OfTheOrderAsPlanned_FindsNothing()
    {
        var verdict = OrderComparison.Compare(Planned, Planned);

        Assert.True(verdict.IsInOrder);
        Assert.Empty(verdict.NotReported);
    }

    [Theory]
    // The rack was put in one place late: its first place is empty.
    [InlineData("-ABCDEFGHIJKL", 2, 13, 1)]
    // The first sample was skipped, or the rack stands one place early.
    [InlineData("BCDEFGHIJKL", 1, 11, -1)]
    // A round sample changer began one place off.
    [InlineData("LABCDEFGHIJK", 2, 12, 1)]
    [InlineData("BCDEFGHIJKLA", 1, 12, -1)]
    [InlineData("KLABCDEFGHIJ", 3, 12, 2)]
    public void Compare_OfAShiftedRack_SaysByHowMuchAndNothingElse(string reported, int first, int last, int by)
    {
        var verdict = Compare(reported);

        var finding = Assert.Single(verdict.Findings);
        Assert.Equal((OrderPattern.Shifted, first, last, by), (finding.Pattern, finding.FirstPlace, finding.LastPlace, finding.By));
    }

    [Fact]
    public void Compare_OfARackShiftedFromItsMiddle_NamesTheStretchAndTheSampleLeftOut()
    {
        var verdict = Compare("ABCDFGHIJKL");

        var finding = Assert.Single(verdict.Findings);
        Assert.Equal((OrderPattern.Shifted, 5, 11, -1), (finding.Pattern, finding.FirstPlace, finding.LastPlace, finding.By));
        Assert.Equal(["E"], verdict.NotReported);
        Assert.Equal(
            "Places 5 to 11: every sample stands 1 place before its planned one (F at place 5, planned for 6): the rack is shifted, or a place was skipped.",
            finding.Explanation);
    }

    [Fact]
    public void Compare_OfAMissingSampleWhosePlaceIsReportedEmpty_FindsNoShift()
    {
        var verdict = Compare("ABCD-FGHIJKL");

        Assert.True(verdict.IsInOrder);
        Assert.Equal(["E"], verdict.NotReported);
    }

    [Theory]
    [InlineData("LKJIHGFEDCBA", null, 1, 12)]
    // A tray of 15 places: three empty ones come first when it is rotated.
    [InlineData("---LKJIHGFEDCBA", 15, 4, 15)]
    [InlineData("ABCDEFLKJIHG", 6, 7, 12)]
    // One sample is missing on the rotated tray.
    [InlineData("FED-BAGHIJKL", 6, 1, 6)]
    public void Compare_OfARotatedTray_SaysWhichOne(string reported, int? trayPlaces, int first, int last)
    {
        var verdict = Compare(reported, trayPlaces);

        var finding = Assert.Single(verdict.Findings);
        Assert.Equal((OrderPattern.TrayRotated, first, last), (finding.Pattern, finding.FirstPlace, finding.LastPlace));
        Assert.Contains("rotated by 180°", finding.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void Compare_OfSwappedNeighbours_NamesThePair()
    {
        var verdict = Compare("ABDCEFGHIJLK");

        Assert.Equal(
            ["Places 3 and 4: the neighbours D and C are swapped.", "Places 11 and 12: the neighbours L and K are swapped."],
            verdict.Findings.Select(finding => finding.Explanation));
    }

    [Fact]
    public void Compare_OfTwoExchangedSamples_NamesBothPlaces()
    {
        var verdict = Compare("AJCDEFGHIBKL");

        var finding = Assert.Single(verdict.Findings);
        Assert.Equal((OrderPattern.Exchanged, 2, 10, "J", "B"), (finding.Pattern, finding.FirstPlace, finding.LastPlace, finding.Found, finding.Planned));
    }

    [Fact]
    public void Compare_OfASampleMovedToTheEnd_NamesItAndTheStretchThatClosedUp()
    {
        var verdict = Compare("ABDEFGHIJKLC");

        Assert.Equal(
            [(OrderPattern.Shifted, 3, 11, -1), (OrderPattern.Misplaced, 12, 12, 9)],
            verdict.Findings.Select(finding => (finding.Pattern, finding.FirstPlace, finding.LastPlace, finding.By)));
    }

    [Fact]
    public void Compare_OfAForeignSample_SaysWhatWasPlannedThere()
    {
        var verdict = Compare("ABXDEFGHIJKL");

        Assert.Equal("Place 3: X is not in this order; C was planned here.", Assert.Single(verdict.Findings).Explanation);
        Assert.Equal(["C"], verdict.NotReported);
    }

    [Fact]
    public void Compare_OfASampleReportedAgainInAnothersPlace_SaysSo()
    {
        var verdict = Compare("ABCDEFGHIJKA");

        Assert.Equal("Place 12: A again; L was planned here.", Assert.Single(verdict.Findings).Explanation);
    }

    [Fact]
    public void Compare_OfARunThatIsNotDone_FindsNothingAndListsTheRest()
    {
        var verdict = Compare("ABCD");

        Assert.True(verdict.IsInOrder);
        Assert.Equal(8, verdict.NotReported.Count);
    }

    [Theory]
    [InlineData("")]
    [InlineData("---")]
    [InlineData("XYZ")]
    public void Compare_WhenNothingOfTheOrderIsReported_ListsAllAsNotReported(string reported) =>
        Assert.Equal(Planned, Compare(reported).NotReported);

    [Fact]
    public void Compare_WhenASampleIsPlannedTwice_IsRefused() =>
        Assert.Contains("'A' twice", Assert.Throws<ArgumentException>(() => OrderComparison.Compare(["A", "B", "A"], ["A"])).Message, StringComparison.Ordinal);

    [Fact]
    public void InSequence_OfRowsWithSeveralReadings_CountsThemOnce() =>
        Assert.Equal(["A", "B", "A"], OrderComparison.InSequence(["A", "A", "B", "B", "B", "A"]));

    /// <summary>Whatever order is reported, nothing is overlooked and nothing is told that is not so.</summary>
    [Property]
    public Property Compare_OfAnyOrder_IsInOrderExactlyWhenEverySampleStandsAtItsPlace() => Prop.ForAll(
        ArbMap.Default.ArbFor<PositiveInt>(),
        ArbMap.Default.ArbFor<PositiveInt>(),
        (seed, size) =>
        {
            var planned = Enumerable.Range(1, 1 + (size.Get % 40)).Select(number => $"S{number}").ToList();
            var reported = new Pcg32((ulong)seed.Get, 1).Shuffle(planned);
            var verdict = OrderComparison.Compare(planned, reported, trayPlaces: 8);
            return verdict.IsInOrder == planned.SequenceEqual(reported) && verdict.NotReported.Count == 0
                && verdict.Findings.All(finding => reported[finding.FirstPlace - 1] == finding.Found && finding.Explanation.Contains(finding.Found, StringComparison.Ordinal));
        });

    private static OrderVerdict Compare(string reported, int? trayPlaces = null) =>
        OrderComparison.Compare(Planned, [.. reported.Select(letter => letter == '-' ? null : letter.ToString())], trayPlaces);
}
