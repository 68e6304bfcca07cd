using LabPipeline.Board.Today;
using LabPipeline.Warehouse.Results;

namespace LabPipeline.Board.Tests.Today;

public sealed class PullSheetTests
{
    private static readonly DateOnly Opens = new(2026, 1, 12);

    [Theory]
    [InlineData(-1, 0, PullStanding.ToCome)]
    [InlineData(0, 0, PullStanding.OnBench)]
    [InlineData(4, 47, PullStanding.OnBench)]
    [InlineData(5, 47, PullStanding.Gaps)]
    [InlineData(4, 48, PullStanding.Complete)]
    [InlineData(5, 48, PullStanding.Complete)]
    public void Standing_OnADay_FollowsFromWindowAndWhatIsMeasured(int daysAfterOpening, int measured, PullStanding expected)
    {
        var pull = Assert.Single(PullSheet.Of("NT26", [Row("glucose_in_extract", measured), Row("hunter_l", 48)], []));

        Assert.Equal(expected, pull.StandingOn(Opens.AddDays(daysAfterOpening)));
    }

    [Fact]
    public void Choice_WithoutACode_IsWhatHasNotEndedOrElseWhatEndedLast()
    {
        TrialSpan[] trials = [Trial("C", 20), Trial("B", 10), Trial("A", 5)];

        Assert.Equal(["C", "B"], Choose(trials, null, 10));
        Assert.Equal(["C"], Choose(trials, null, 21));
        Assert.Equal(["A"], Choose(trials, "A", 0));
        Assert.Empty(Choose(trials, "D", 0));
        Assert.Empty(Choose([], null, 0));
    }

    private static IEnumerable<string> Choose(TrialSpan[] trials, string? asked, int day) =>
        TrialChoice.Choose(trials, asked, _ => Opens.AddDays(day)).Select(trial => trial.TrialCode);

    private static TrialSpan Trial(string code, int lastDay) => new() { TrialCode = code, LastClosesOn = Opens.AddDays(lastDay) };

    private static PullProgress Row(string quantity, int measured) =>
        new() { PullNo = 4, DueOn = Opens, OpensOn = Opens, ClosesOn = Opens.AddDays(4), Quantity = quantity, SamplesPlanned = 48, SamplesMeasured = measured };
}
