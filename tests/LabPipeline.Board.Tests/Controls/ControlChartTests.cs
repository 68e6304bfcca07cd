using LabPipeline.Board.Controls;
using LabPipeline.Quality.Rules;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Controls;

namespace LabPipeline.Board.Tests.Controls;

public sealed class ControlChartTests
{
    private const string Meter = "colour meter 1";
    private const string Tile = "check tile";

    private static readonly DateTimeOffset Start = new(2026, 1, 5, 8, 0, 0, TimeSpan.Zero);

    private static readonly ControlLimitRow Target = new()
    {
        Instrument = Meter,
        Material = Tile,
        QuantityId = QuantityCatalogue.HunterL.Id,
        Version = 1,
        Kind = ControlLimitKinds.Target,
        Centre = 50m,
        Lower = 49m,
        Upper = 51m,
        InForceFrom = Start,
    };

    private static readonly ControlLimitRow Frozen = Target with { Version = 2, Kind = ControlLimitKinds.Frozen, Sigma = 0.5m, Lower = 48.5m, Upper = 51.5m };

    [Fact]
    public void Run_WithoutLimitsInForce_IsNotJudged()
    {
        var run = Assert.Single(ControlChart.Of(Meter, [Point("R1", -1, 60m)], new ControlLimitBook([Target])));

        Assert.Equal(("not judged", null, 0), (run.Kind, run.Limits, run.Failed));
    }

    [Fact]
    public void Run_WhoseLaterControlFails_IsFailedThoughItOpenedWell()
    {
        var run = Assert.Single(ControlChart.Of(Meter, [Point("R1", 0, 50m), Point("R1", 0.1, 52m)], new ControlLimitBook([Target])));

        Assert.Equal(("failed", 50m, 2, 1), (run.Kind, run.Value, run.Controls, run.Failed));
        Assert.Equal([ControlReview.OutsideTolerance], run.Rules);
    }

    // ISO 7870-2 b (from memory): seven points in a row on one side of the centre line; the seventh completes the pattern.
    [Fact]
    public void Runs_SevenOnOneSideOfFrozenLimits_DriftFromTheSeventhOn()
    {
        var runs = ControlChart.Of(Meter, [.. Enumerable.Range(0, 8).Select(day => Point($"R{day}", day, 50.1m + (day % 2 * 0.1m)))], new ControlLimitBook([Frozen]));

        Assert.Equal(["within", "within", "within", "within", "within", "within", "drift", "drift"], runs.Select(run => run.Kind));
        Assert.Equal(["seven_one_side"], runs[6].Rules);
    }

    [Fact]
    public void Runs_UnderAStatedTarget_HaveNoDrift() => Assert.All(
        ControlChart.Of(Meter, [.. Enumerable.Range(0, 8).Select(day => Point($"R{day}", day, 50.1m + (day % 2 * 0.1m)))], new ControlLimitBook([Target])),
        run => Assert.Equal("within", run.Kind));

    [Fact]
    public void Run_AfterLimitsChanged_IsHeldAgainstThoseInForceThen()
    {
        var wide = Target with { Version = 2, Lower = 40m, Upper = 60m, InForceFrom = Start.AddDays(5) };

        var runs = ControlChart.Of(Meter, [Point("R1", 1, 55m), Point("R2", 6, 55m)], new ControlLimitBook([Target, wide]));

        Assert.Equal([("failed", 1), ("within", 2)], runs.Select(run => (run.Kind, run.Limits!.Version)));
    }

    private static (string Run, ControlPoint Point) Point(string run, double day, decimal value) => (run, new ControlPoint
    {
        Material = Tile,
        QuantityId = QuantityCatalogue.HunterL.Id,
        RowKey = $"{run}/{day}",
        Value = value,
        MeasuredAt = Start.AddDays(day),
    });
}
