using System.Text.Json;
using LabPipeline.Contracts.V1;
using LabPipeline.Quality.Evaluation;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Controls;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Plan;
using LabPipeline.Warehouse.Results;
using LabPipeline.Warehouse.Thresholds;
using Microsoft.Extensions.Time.Testing;

namespace LabPipeline.Quality.Tests.Evaluation;

/// <summary>A failed control marks the results beside it until a good control or a named person answers for them.</summary>
public sealed class ControlEvaluationTests : IAsyncLifetime
{
    private const string Run = "2026-10-06";
    private static readonly DateTimeOffset BenchDay = new(2026, 10, 6, 15, 0, 0, TimeSpan.Zero);

    private readonly FakeTimeProvider _time = new(BenchDay.AddHours(2));
    private QualityLab _lab = null!;

    public async ValueTask InitializeAsync()
    {
        _lab = await QualityLab.CreateAsync(_time);
        await StateAsync(0.050m, 0.0025m);
    }

    public ValueTask DisposeAsync() => _lab.DisposeAsync();

    [Fact]
    public async Task Controls_WhenTheClosingOneFails_MarkTheResultsBesideIt()
    {
        var (near, far) = (_lab.Barcode(0), _lab.Barcode(1));
        await StoreRunAsync(far, near, closing: 0.060m);

        await EvaluateAsync(near, far);

        Assert.Equal([(far, false), (near, true)], await MarksAsync(far, near));
        var alert = Assert.Single(await ControlAlertsAsync());
        Assert.Equal((AlertLevels.Hold, AlertStates.Open, "controls:analyser 1/2026-10-06"), (alert.Level, alert.State, alert.Scope));
        Assert.Contains("2 readings of 1 samples are in doubt", alert.Headline, StringComparison.Ordinal);
        var trail = await _lab.Warehouse.ReadAsync(session => TrailStore.ListReadingsAsync(session, near), TestContext.Current.CancellationToken);
        Assert.Equal(2, trail.Count(reading => reading.DoubtCause is not null));
        Assert.All(trail.Where(reading => reading.DoubtCause is not null), reading => Assert.Contains("CTRL-LOW glucose_in_extract reads 0.06", reading.DoubtCause!, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Doubts_OfARunThatIsNotJudgedYet_MarkTheResultsAndRaiseNothing()
    {
        var (near, far) = (_lab.Barcode(0), _lab.Barcode(1));
        await StoreRunAsync(far, near, closing: 0.060m);

        await _lab.EvaluateAsync(async (session, now) =>
        {
            var touched = await QualityEvaluation.DoubtsAsync(session, [.. await ControlEvidenceStore.ListRunsAsync(session, [near], fileId: null)]);
            Assert.Equal([near], touched);
            await _lab.Evaluation.SamplesAsync(session, [near, far], now);
        });

        Assert.Equal([(far, false), (near, true)], await MarksAsync(far, near));
        Assert.Empty(await ControlAlertsAsync());
    }

    [Fact]
    public async Task Controls_JudgedAgain_ChangeNothingAndTellNothing()
    {
        var (near, far) = (_lab.Barcode(0), _lab.Barcode(1));
        await StoreRunAsync(far, near, closing: 0.060m);
        await EvaluateAsync(near, far);
        var before = (await _lab.ResultsAsync(near, far), await _lab.AlertsAsync());

        _time.Advance(TimeSpan.FromHours(1));
        await EvaluateAsync(near, far);

        Assert.Equal(before.Item1, await _lab.ResultsAsync(near, far));
        Assert.Equal(before.Item2, await _lab.AlertsAsync());
        Assert.Single(await _lab.SentAsync<QcAlertRaised>());
    }

    [Fact]
    public async Task Controls_OnceReleasedByAPerson_TakeTheMarkOffAndKeepTheReason()
    {
        var (near, far) = (_lab.Barcode(0), _lab.Barcode(1));
        await StoreRunAsync(far, near, closing: 0.060m);
        await EvaluateAsync(near, far);
        await ReleaseAsync();

        await EvaluateAsync(near, far);

        Assert.Equal([(far, false), (near, false)], await MarksAsync(far, near));
        Assert.Equal((AlertStates.Settled, "lab manager"), (await ControlAlertsAsync()).Select(alert => (alert.State, alert.SettledBy)).Single());
        Assert.Contains(near, Assert.Single(await _lab.SentAsync<ReadingsChanged>()), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Controls_WhenAnotherFailsAfterARelease_AreRaisedAgain()
    {
        var (near, far) = (_lab.Barcode(0), _lab.Barcode(1));
        await StoreRunAsync(far, near, closing: 0.060m);
        await EvaluateAsync(near, far);
        await ReleaseAsync();
        await _lab.StoreAsync("late control.csv", [Control(60, 0.070m)]);

        await EvaluateAsync(near, far);

        var alert = Assert.Single(await ControlAlertsAsync());
        Assert.Equal((AlertStates.Open, 2), (alert.State, alert.TimesRaised));
    }

    [Fact]
    [Shows(69)]
    public async Task Controls_WhateverOrderFilesArriveIn_LeaveTheSameMarks()
    {
        var (near, far) = (_lab.Barcode(0), _lab.Barcode(1));
        await _lab.StoreAsync("samples.csv", [.. Sample(far, 10), .. Sample(near, 30)]);
        await EvaluateAsync(near, far);
        Assert.Equal([(far, false), (near, false)], await MarksAsync(far, near));
        await _lab.StoreAsync("controls.csv", [Control(0, 0.050m), Control(20, 0.050m), Control(40, 0.060m)]);

        await EvaluateAsync(near, far);

        Assert.Equal([(far, false), (near, true)], await MarksAsync(far, near));
    }

    [Fact]
    public async Task Controls_WhenTheirLimitsAreWidened_PassFromTheDayTheyAreInForce()
    {
        var (near, far) = (_lab.Barcode(0), _lab.Barcode(1));
        await StoreRunAsync(far, near, closing: 0.060m);
        await EvaluateAsync(near, far);

        await StateAsync(0.050m, 0.02m);
        await EvaluateAsync(near, far);

        Assert.Equal([(far, false), (near, false)], await MarksAsync(far, near));
        Assert.Equal(AlertStates.Cleared, Assert.Single(await ControlAlertsAsync()).State);
        Assert.Equal([1, 2], (await _lab.WriteAsync(ControlLimitStore.ListAsync)).Select(row => row.Version));
    }

    [Fact]
    public async Task Controls_OfAMaterialWithoutLimits_AreSaidToBeUnjudged()
    {
        await _lab.StoreAsync("controls.csv", [Control(0, 0.5m) with { Material = "CTRL-NEW" }, .. Sample(_lab.Barcode(0), 10)]);

        await EvaluateAsync(_lab.Barcode(0));

        var alert = Assert.Single(await _lab.AlertsAsync(), alert => alert.RuleName == "control chart trend");
        Assert.Equal(AlertLevels.Note, alert.Level);
        Assert.Contains("was not evaluated", alert.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Exclusion_OfAReading_LeavesItsReasonInTheGridAndTheTrail()
    {
        var barcode = _lab.Barcode(0);
        await _lab.StoreAsync("samples.csv", [.. Sample(barcode, 10)]);
        var count = await _lab.WriteAsync(session => ReadingExclusions.SetAsideAsync(
            session, barcode, QuantityCatalogue.GlucoseInExtract.Id, "B", "A. Lead", "spilt", _time.GetUtcNow()));

        _time.SetUtcNow(new DateTimeOffset(2026, 10, 10, 6, 0, 0, TimeSpan.Zero));
        await _lab.EvaluateAsync((session, now) => _lab.Evaluation.PullsAsync(session, [FirstPull], now));

        var grid = await _lab.WriteAsync(session => SeasonGridStore.ListAsync(session, QualityLab.TrialCode));
        var cell = Assert.Single(grid, cell => cell.Barcode == barcode);
        Assert.Equal((1, 1, "excluded", "1 set aside by A. Lead: spilt"), (count, cell.Readings, cell.State, cell.Reason));
        Assert.Equal(23, grid.Count(other => other is { PullNo: 1, State: "missing" }));
        Assert.Equal(24, grid.Count(other => other is { PullNo: 2, State: "expected" }));
    }

    [Fact]
    public async Task Threshold_SetByAPerson_IsKeptWithItsHistoryAndToldToTheServices()
    {
        await _lab.StoreAsync("samples.csv", [.. Sample(_lab.Barcode(0), 10)]);
        await SetThresholdAsync(0.04m, "tighter");
        await SetThresholdAsync(null, "back");

        var rows = await _lab.WriteAsync(ThresholdStore.ListAsync);

        Assert.Equal([(1, 0.04m, "tighter"), (2, (decimal?)null, "back")], rows.Select(row => (row.Version, row.Value, row.Why)));
        Assert.Equal(2, (await _lab.SentAsync<ReadingsChanged>()).Count);
    }

    [Fact]
    public async Task BenchOrder_WhenSamplesAreExchanged_IsToldForTheRun()
    {
        var places = Enumerable.Range(0, 8).Select(PlaceOf).ToList();
        await _lab.WriteAsync(session => BenchOrderStore.KeepAsync(session, Order(places), null));
        var order = new[] { 0, 1, 6, 3, 4, 5, 2, 7 };
        var file = await _lab.StoreAsync("samples.csv", [.. order.SelectMany((plot, index) => Sample(_lab.Barcode(plot), 10 + index))]);

        await _lab.EvaluateAsync((session, now) => _lab.Evaluation.OrdersAsync(session, [.. places.Select(place => place.Barcode)], now));

        var alert = Assert.Single(await _lab.AlertsAsync());
        Assert.Equal(("bench order mismatch", AlertLevels.Hold), (alert.RuleName, alert.Level));
        Assert.Contains("stand in each other's place", alert.Headline, StringComparison.Ordinal);
        Assert.True(file > 0);
    }

    private static PlannedPull FirstPull => new()
    {
        TrialCode = QualityLab.TrialCode,
        PullNo = 1,
        DueOn = new DateOnly(2026, 10, 5),
        OpensOn = new DateOnly(2026, 10, 5),
        ClosesOn = new DateOnly(2026, 10, 9),
        TimeZone = "America/Chicago",
    };

    private BenchPlace PlaceOf(int plot) => new() { Position = plot + 1, Barcode = _lab.Barcode(plot), Block = "1", PlotCode = FormattableString.Invariant($"10{plot + 1}") };

    private BenchOrder Order(IReadOnlyList<BenchPlace> places) => new()
    {
        TrialCode = QualityLab.TrialCode,
        PullNo = 1,
        Kind = BenchOrderKinds.Analysis,
        Seed = 1,
        MadeAt = _time.GetUtcNow(),
        MadeBy = "A. Lead",
        Places = places,
    };

    private Task<ThresholdRow> SetThresholdAsync(decimal? value, string why) => _lab.WriteAsync(session => ThresholdStore.SetAsync(session, new ThresholdRow
    {
        TrialCode = QualityLab.TrialCode,
        QuantityId = QuantityCatalogue.Glucose.Id,
        Kind = ThresholdKinds.High,
        Value = value,
        InForceFrom = BenchDay.AddDays(-1),
        SetAt = _time.GetUtcNow(),
        SetBy = "A. Lead",
        Why = why,
    }));

    private Task<ControlLimitRow> StateAsync(decimal target, decimal tolerance) => _lab.WriteAsync(session => ControlLimitStore.KeepAsync(session, new ControlLimitRow
    {
        Instrument = "analyser 1",
        Material = "CTRL-LOW",
        QuantityId = QuantityCatalogue.GlucoseInExtract.Id,
        Kind = ControlLimitKinds.Target,
        Centre = target,
        Lower = target - tolerance,
        Upper = target + tolerance,
        InForceFrom = BenchDay.AddDays(-1),
        DecidedAt = _time.GetUtcNow(),
        DecidedBy = "A. Lead",
        Why = "certificate",
    }));

    private Task<int> StoreRunAsync(string first, string second, decimal closing) => _lab.StoreAsync(
        "run.csv", [Control(0, 0.050m), .. Sample(first, 10), Control(20, 0.050m), .. Sample(second, 30), Control(40, closing)]);

    private async Task ReleaseAsync()
    {
        var evidence = await _lab.WriteAsync(session => ControlEvidenceStore.FindAsync(session, "analyser 1", Run));
        var now = _time.GetUtcNow();
        await _lab.WriteAsync(async session =>
        {
            await ControlReleaseStore.AddAsync(session, new ControlRelease
            {
                Instrument = "analyser 1",
                Run = Run,
                Controls = JsonSerializer.Serialize(evidence!.Failed.Select(verdict => verdict.Point.Identity)),
                ReleasedAt = now,
                ReleasedBy = "lab manager",
                Why = "control vial was old, fresh one reads right",
            });
            var alert = (await AlertStore.ListByScopesAsync(session, [evidence.Scope])).Single();
            return await AlertStore.SettleAsync(session, alert.AlertId, "lab manager", "released", now);
        });
    }

    private Task EvaluateAsync(params string[] barcodes) => _lab.EvaluateAsync(async (session, now) =>
    {
        var runs = await ControlEvidenceStore.ListRunsAsync(session, barcodes, fileId: null);
        var doubted = await _lab.Evaluation.ControlsAsync(session, [.. runs], now);
        await _lab.Evaluation.SamplesAsync(session, [.. barcodes.Union(doubted)], now);
    });

    private async Task<IEnumerable<(string Barcode, bool InDoubt)>> MarksAsync(params string[] barcodes)
    {
        var results = (await _lab.ResultsAsync(barcodes)).ToLookup(result => result.Barcode);
        return barcodes.Select(barcode => (barcode, results[barcode].Any(result => result.InDoubt)));
    }

    private async Task<IReadOnlyList<Alert>> ControlAlertsAsync() => [.. (await _lab.AlertsAsync()).Where(alert => alert.RuleName == "control check out")];

    private static IEnumerable<NewFact> Sample(string barcode, int minute) => QualityLab.Sugars(barcode, 0.080m, 0.080m, BenchDay.AddMinutes(minute), Run);

    private static NewFact Control(int minute, decimal value) => QualityLab.Sugars("", value, value, BenchDay.AddMinutes(minute), Run).First() with
    {
        Subject = FactSubject.Control,
        Barcode = null,
        Material = "CTRL-LOW",
        RowKey = FormattableString.Invariant($"control {minute:00}"),
        Extract = null,
    };
}
