using LabPipeline.Contracts.V1;
using LabPipeline.Quality.Evaluation;
using LabPipeline.Science.Quantities;
using LabPipeline.Science.Repeatability;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Time.Testing;

namespace LabPipeline.Quality.Tests.Evaluation;

/// <summary>Readings in a real warehouse become results, alerts and messages in one transaction, and the same again changes nothing.</summary>
public abstract class EvaluationSuite(DialectName store) : IAsyncLifetime
{
    private static readonly DateTimeOffset BenchDay = new(2026, 10, 6, 15, 0, 0, TimeSpan.Zero);

    private readonly FakeTimeProvider _time = new(BenchDay.AddHours(2));
    private QualityLab _lab = null!;

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => _lab = await QualityLab.CreateAsync(_time, store: store);

    public async ValueTask DisposeAsync()
    {
        await _lab.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Samples_WithDisagreeingDuplicates_GetAResultMarkedOpenAndOneAlert()
    {
        var barcode = _lab.Barcode(0);
        await _lab.StoreAsync("sugars.csv", [.. QualityLab.Sugars(barcode, 0.182m, 0.231m, BenchDay)]);

        await EvaluateAsync(barcode);

        var result = Assert.Single(await _lab.ResultsAsync(barcode));
        Assert.Equal((QuantityCatalogue.Glucose.Id, 0.2065m, false, 2, "mean of 2, disagreement open"), (result.QuantityId, result.Value, result.BelowLimit, result.N, result.Basis));
        var readings = System.Text.Json.JsonSerializer.Deserialize<long[]>(result.FromReadings)!;
        Assert.Equal(Enumerable.Range(0, 8).Select(number => readings[0] + number), readings);
        var alert = Assert.Single(await _lab.AlertsAsync());
        Assert.Equal(("duplicate disagreement", AlertLevels.Hold, AlertStates.Open, 1), (alert.RuleName, alert.Level, alert.State, alert.TimesRaised));
        Assert.Equal(("sample:" + barcode, QualityLab.TrialCode, 1, barcode), (alert.Scope, alert.TrialCode, alert.PullNo, alert.Barcode));
        Assert.Contains(alert.Headline, Assert.Single(await _lab.SentAsync<QcAlertRaised>()), StringComparison.Ordinal);
    }

    [Fact]
    [Shows(62)]
    public async Task Samples_EvaluatedAgain_ChangeNothingAndTellNothing()
    {
        var barcode = _lab.Barcode(0);
        await _lab.StoreAsync("sugars.csv", [.. QualityLab.Sugars(barcode, 0.182m, 0.231m, BenchDay)]);
        await EvaluateAsync(barcode);
        var (results, alerts) = (await _lab.ResultsAsync(barcode), await _lab.AlertsAsync());
        _time.Advance(TimeSpan.FromHours(1));

        await EvaluateAsync(barcode);

        Assert.Equal(results, await _lab.ResultsAsync(barcode));
        Assert.Equal(alerts, await _lab.AlertsAsync());
        Assert.Single(await _lab.SentAsync<QcAlertRaised>());
    }

    [Fact]
    public async Task Samples_OnceAThirdExtractAgrees_ClearTheAlertAndTellIt()
    {
        var barcode = _lab.Barcode(0);
        await _lab.StoreAsync("sugars.csv", [.. QualityLab.Sugars(barcode, 0.182m, 0.212m, BenchDay)]);
        await EvaluateAsync(barcode);
        await _lab.StoreAsync("sugars-2.csv", [.. QualityLab.Sugars(barcode, 0.199m, 0.199m, BenchDay.AddHours(1), run: "repeat").Take(4).Select(fact => fact with { Extract = "C" })]);

        await EvaluateAsync(barcode);

        // Mean 0.19767, s_r = 4.4 % of it = 0.0086973; CR(3) = 3.3 s_r = 0.0287 < range 0.030: still open, median of three.
        Assert.Equal("median of 3, disagreement open", Assert.Single(await _lab.ResultsAsync(barcode)).Basis);
        await _lab.StoreAsync("sugars-3.csv", [.. QualityLab.Sugars(barcode, 0.200m, 0.200m, BenchDay.AddHours(2), run: "repeat 2").Take(4).Select(fact => fact with { Extract = "D" })]);
        await EvaluateAsync(barcode);

        // Mean of four 0.19825, CR(4) = 3.6 s_r = 0.0314 >= 0.030.
        Assert.Equal((0.19825m, "mean of 4"), (await _lab.ResultsAsync(barcode)).Select(result => (result.Value, result.Basis)).Single());
        Assert.Equal(AlertStates.Cleared, Assert.Single(await _lab.AlertsAsync()).State);
        Assert.Single(await _lab.SentAsync<QcAlertCleared>());
    }

    [Fact]
    public async Task Alert_ThatComesBack_IsRaisedAgainUnderTheSameNumber()
    {
        var barcode = _lab.Barcode(0);
        var file = await _lab.StoreAsync("sugars.csv", [.. QualityLab.Sugars(barcode, 0.182m, 0.231m, BenchDay)]);
        await EvaluateAsync(barcode);
        await StandAsync(file, Standing.TakenOut);
        await EvaluateAsync(barcode);
        Assert.Empty(await _lab.ResultsAsync(barcode));
        await StandAsync(file, Standing.InEffect);

        await EvaluateAsync(barcode);

        var alert = Assert.Single(await _lab.AlertsAsync());
        Assert.Equal((AlertStates.Open, 2), (alert.State, alert.TimesRaised));
        Assert.Null(alert.ClearedAt);
        Assert.Equal(2, (await _lab.SentAsync<QcAlertRaised>()).Count);
        Assert.Single(await _lab.SentAsync<QcAlertCleared>());
    }

    [Fact]
    public async Task Alert_SettledByAPerson_StaysSettledUntilItsFactsChange()
    {
        var barcode = _lab.Barcode(0);
        await _lab.StoreAsync("sugars.csv", [.. QualityLab.Sugars(barcode, 0.182m, 0.231m, BenchDay)]);
        await EvaluateAsync(barcode);
        var id = (await _lab.AlertsAsync())[0].AlertId;
        await _lab.WriteAsync(session => AlertStore.SettleAsync(session, id, "lab manager", "tissue used up", _time.GetUtcNow()));

        await EvaluateAsync(barcode);
        Assert.Equal(AlertStates.Settled, (await _lab.AlertsAsync())[0].State);
        await _lab.StoreAsync("more.csv", [.. QualityLab.Sugars(barcode, 0.300m, 0.300m, BenchDay.AddHours(3), run: "repeat").Take(4).Select(fact => fact with { Extract = "C" })]);
        await EvaluateAsync(barcode);

        var alert = Assert.Single(await _lab.AlertsAsync());
        Assert.Equal((AlertStates.Open, 2), (alert.State, alert.TimesRaised));
        Assert.Null(alert.SettledBy);
    }

    [Fact]
    public async Task Conflict_OfAReExport_IsHeldWithBothValues()
    {
        var barcode = _lab.Barcode(0);
        await _lab.StoreAsync("sugars.csv", [.. QualityLab.Sugars(barcode, 0.182m, 0.183m, BenchDay)]);
        await _lab.StoreAsync("edited.csv", [.. QualityLab.Sugars(barcode, 0.192m, 0.183m, BenchDay)]);

        await EvaluateAsync(barcode);

        var alert = Assert.Single(await _lab.AlertsAsync());
        Assert.Equal("conflicting re-export", alert.RuleName);
        Assert.Contains("glucose_in_extract 0.192 g/L (edited.csv line 2) against 0.182 g/L (sugars.csv line 2)", alert.Headline, StringComparison.Ordinal);
        Assert.Equal(0.1825m, Assert.Single(await _lab.ResultsAsync(barcode)).Value);
    }

    [Fact]
    public async Task Barcodes_InNoPlan_GiveNoResultsAndOneAlertOfTheirFile()
    {
        await using var unplanned = await QualityLab.CreateAsync(_time, withPlan: false, store);
        var barcode = unplanned.Barcode(0);
        var file = await unplanned.StoreAsync("sugars.csv", [.. QualityLab.Sugars(barcode, 0.182m, 0.183m, BenchDay)], FileState.Waiting);
        await unplanned.EvaluateAsync((session, now) => unplanned.Evaluation.SamplesAsync(session, [barcode], now));
        await unplanned.EvaluateAsync((session, now) => unplanned.Evaluation.FilesAsync(session, [file], now));
        Assert.Contains(barcode, Assert.Single(await unplanned.AlertsAsync()).Headline, StringComparison.Ordinal);

        await unplanned.LoadPlanAsync();
        await unplanned.EvaluateAsync((session, now) => unplanned.Evaluation.SamplesAsync(session, [barcode], now));
        await unplanned.EvaluateAsync((session, now) => unplanned.Evaluation.FilesAsync(session, [file], now));

        Assert.Single(await unplanned.ResultsAsync(barcode));
        Assert.Equal(AlertStates.Cleared, Assert.Single(await unplanned.AlertsAsync()).State);
    }

    [Fact]
    public async Task Refusal_OnceAFileOfThatNameWasRead_Clears()
    {
        var refused = await _lab.StoreAsync("sugars.csv", [], FileState.Refused, "line 4: '4,6'");
        await _lab.EvaluateAsync((session, now) => _lab.Evaluation.FilesAsync(session, [refused], now));
        Assert.Equal(AlertLevels.Block, Assert.Single(await _lab.AlertsAsync()).Level);
        await _lab.StoreAsync("sugars.csv", [.. QualityLab.Sugars(_lab.Barcode(0), 0.182m, 0.183m, BenchDay)]);

        await _lab.EvaluateAsync((session, now) => _lab.Evaluation.FilesAsync(session, [refused], now));

        Assert.Equal(AlertStates.Cleared, Assert.Single(await _lab.AlertsAsync()).State);
    }

    [Fact]
    public async Task Session_WithTheSlingLeftOn_IsHeldAgainstItsSisters()
    {
        foreach (var block in new[] { 0, 1, 2 })
        {
            var weights = Enumerable.Range(0, 8).SelectMany(index => QualityLab.Weights(
                _lab.Barcode((8 * block) + index), 3600m, 270m + (3m * index) + (block == 1 ? 12.4m : 0.2m * ((block + index) % 3)), $"session {block + 1}", BenchDay));
            await _lab.StoreAsync($"weights-{block}.csv", [.. weights]);
        }

        var runs = await _lab.WriteAsync(session => RunEvidenceStore.ListWeighingRunsAsync(session, [_lab.Barcode(0)], null));
        Assert.Equal(3, runs.Count);
        await _lab.EvaluateAsync((session, now) => _lab.Evaluation.RunsAsync(session, runs, now));

        var alert = Assert.Single(await _lab.AlertsAsync());
        Assert.Equal(("weighing off", "run:balance 1/session 2", AlertStates.Open), (alert.RuleName, alert.Scope, alert.State));
    }

    [Fact]
    public async Task FryBatch_OutOfItsWindow_IsHeld()
    {
        var file = await _lab.StoreAsync("fry.csv", [QualityLab.Fry(QuantityCatalogue.OilStart, 174m, "batch 7"), QualityLab.Fry(QuantityCatalogue.FryTime, 130m, "batch 7")]);
        var runs = await _lab.WriteAsync(session => RunEvidenceStore.ListFryRunsAsync(session, file));

        await _lab.EvaluateAsync((session, now) => _lab.Evaluation.RunsAsync(session, runs, now));

        Assert.Contains("oil_start 174 degC, window 175 to 190", Assert.Single(await _lab.AlertsAsync()).Headline, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Failure_InTheMiddle_LeavesNeitherResultsNorAlertsNorMessages()
    {
        var barcode = _lab.Barcode(0);
        await _lab.StoreAsync("sugars.csv", [.. QualityLab.Sugars(barcode, 0.182m, 0.231m, BenchDay)]);

        await Assert.ThrowsAsync<TimeoutException>(() => _lab.EvaluateAsync(async (session, now) =>
        {
            await _lab.Evaluation.SamplesAsync(session, [barcode], now);
            throw new TimeoutException();
        }));

        Assert.Empty(await _lab.ResultsAsync(barcode));
        Assert.Empty(await _lab.AlertsAsync());
        Assert.Empty(await _lab.SentAsync<QcAlertRaised>());
    }

    [Fact]
    public async Task Changes_OfAlerts_LeaveATrail()
    {
        var barcode = _lab.Barcode(0);
        var file = await _lab.StoreAsync("sugars.csv", [.. QualityLab.Sugars(barcode, 0.182m, 0.231m, BenchDay)]);
        await EvaluateAsync(barcode);
        await StandAsync(file, Standing.TakenOut);
        await EvaluateAsync(barcode);
        var subject = Alert.SubjectOf((await _lab.AlertsAsync())[0].AlertId);

        var changes = await _lab.Warehouse.ReadAsync(session => ChangeLogStore.ListAsync(session, subject), Token);

        Assert.Equal(["alert raised", "alert cleared"], changes.Select(change => change.What));
    }

    [Fact]
    public async Task Pairs_OfDuplicates_AreListedForTheLabsOwnRepeatability()
    {
        await _lab.StoreAsync("sugars.csv",
        [
            .. QualityLab.Sugars(_lab.Barcode(0), 0.182m, 0.231m, BenchDay),
            .. QualityLab.Sugars(_lab.Barcode(1), 0.1m, 0.11m, BenchDay),
            .. QualityLab.Sugars(_lab.Barcode(2), 0.1m, 0.11m, BenchDay).Take(4),
        ]);

        var pairs = await _lab.Warehouse.ReadAsync(session => DuplicatePairStore.ListAsync(session, QuantityCatalogue.Glucose), Token);

        Assert.Equal([new DuplicatePair(0.1m, 0.11m), new DuplicatePair(0.182m, 0.231m)], pairs.OrderBy(pair => pair.First));
    }

    [Fact]
    public async Task Runs_ByTheirNames_AreFoundThoughNamesHoldSlashes()
    {
        await _lab.StoreAsync("fry.csv", [QualityLab.Fry(QuantityCatalogue.OilStart, 174m, "2026/10/06/7") with { Instrument = "fryer 1/left" }]);

        var runs = await _lab.WriteAsync(session => RunEvidenceStore.FindRunsAsync(session, ["fryer 1/left/2026/10/06/7", "fryer 1/right"]));

        Assert.Single(runs);
    }

    private Task EvaluateAsync(params string[] barcodes) => _lab.EvaluateAsync((session, now) => _lab.Evaluation.SamplesAsync(session, barcodes, now));

    private Task<int> StandAsync(int fileId, Standing standing) => _lab.WriteAsync(session => Dapper.SqlMapper.ExecuteAsync(
        session.Connection, "update reading set standing = @standing where file_id = @fileId", new { fileId, standing }, session.Transaction));
}
