using Dapper;
using LabPipeline.Hosting;
using LabPipeline.Hosting.Bus;
using LabPipeline.Intake;
using LabPipeline.Quality.Evaluation;
using LabPipeline.Quality.Rules;
using LabPipeline.Station.Demo;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Plan;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;

namespace LabPipeline.Station.Tests.Demo;

/// <summary>The season taken by intake and judged by the rules: what was planted is found, and nothing else stops the work.</summary>
public sealed class DemoAlertsTests : IAsyncLifetime
{
    private static readonly DateTimeOffset Start = new(2026, 5, 20, 12, 0, 0, TimeSpan.Zero);

    private readonly ScratchFolder _folder = new();
    private readonly SteppedTime _time = new(Start);
    private readonly DemoScenario _scenario = DemoScenario.Create();
    private ScratchWarehouse _scratch = null!;

    public async ValueTask InitializeAsync() => _scratch = await ScratchWarehouse.CreateAsync(_time);

    public async ValueTask DisposeAsync()
    {
        await _scratch.DisposeAsync();
        _folder.Dispose();
    }

    [Fact]
    public async Task Season_TakenAndJudged_AlertsWhatWasPlantedAndNothingElse()
    {
        var token = TestContext.Current.CancellationToken;
        await _scratch.Warehouse.WriteAsync(session => DemoPreparation.PrepareAsync(session, _scenario, Start), token);
        await TakeFilesAsync(token);
        await _scratch.Warehouse.WriteAsync(JudgeAsync, token);

        var alerts = await _scratch.Warehouse.ReadAsync(
            session => AlertStore.ListAsync(session, new AlertFilter { State = AlertStates.Open, Most = 10_000 }), token);

        var missed = _scenario.Troubles
            .SelectMany(trouble => trouble.AlsoRules.Prepend(trouble.Rule).OfType<string>().Select(rule => (trouble, rule)))
            .Where(planted => !alerts.Any(alert => alert.RuleName == planted.rule && (planted.rule != planted.trouble.Rule || Speaks(alert, planted.trouble))))
            .Select(planted => $"{planted.trouble.Name}: {planted.rule}, {planted.trouble.Where}");
        Assert.False(missed.Any(), string.Join(Environment.NewLine, missed));

        var expectedRules = _scenario.Troubles.SelectMany(trouble => trouble.AlsoRules.Prepend(trouble.Rule).OfType<string>()).ToList();
        var surplus = alerts.Where(alert => !_scenario.Troubles.Any(trouble => trouble.Rule == alert.RuleName && Speaks(alert, trouble)))
            .Where(alert => !_scenario.Troubles.Any(trouble => trouble.AlsoRules.Contains(alert.RuleName)))
            .Select(alert => $"{alert.Level} {alert.RuleName}: {alert.Headline}");
        Assert.False(surplus.Any(), string.Join(Environment.NewLine, surplus));
        Assert.InRange(alerts.Count(alert => alert.Level != AlertLevels.Note), 1, expectedRules.Count + 1);
    }

    private static bool Speaks(Alert alert, PlantedTrouble trouble)
    {
        var text = $"{alert.Headline} {alert.Scope} {alert.Facts}";
        return trouble.Where.Split(", ").All(part => text.Contains(part, StringComparison.Ordinal));
    }

    /// <summary>Two looks at every folder, an hour apart: the first sees the files, the second takes those that kept quiet.</summary>
    private async Task TakeFilesAsync(CancellationToken token)
    {
        var lab = new LabOptions { DataFolder = _folder.Path };
        new DemoWriter(lab).Write(_scenario);
        using var relay = new RelaySignal();
        foreach (var module in StationModules.All().OfType<IntakeModule>())
        {
            using var worker = new IntakeWorker(
                module.Kind, _scratch.Warehouse, relay, _time, Options.Create(lab), Options.Create(new IntakeOptions()), NullLogger<IntakeWorker>.Instance);
            await worker.LookAsync(token);
            _time.Step(TimeSpan.FromMinutes(1));
            await worker.LookAsync(token);
        }
    }

    private async Task JudgeAsync(WarehouseSession session)
    {
        var limits = new RuleLimits();
        var evaluation = new QualityEvaluation(new RuleSet(limits), limits);
        var now = Start.AddDays(1);
        var runs = await NumbersAsync(session, "select run_id from instrument_run");
        await evaluation.ControlsAsync(session, runs, now);
        await evaluation.SamplesAsync(session, [.. PlanSamples.Of(_scenario.Plan).Select(sample => sample.Barcode.Text)], now);
        await evaluation.OrdersAsync(session, [.. PlanSamples.Of(_scenario.Plan).Select(sample => sample.Barcode.Text)], now);
        await evaluation.RunsAsync(session, runs, now);
        await evaluation.FilesAsync(session, await NumbersAsync(session, "select file_id from source_file"), now);
        await evaluation.PullsAsync(
            session,
            [
                .. _scenario.Plan.Pulls.Select(pull => new PlannedPull
                {
                    TrialCode = _scenario.Plan.Code,
                    PullNo = pull.Number,
                    DueOn = pull.DueOn,
                    OpensOn = pull.OpensOn,
                    ClosesOn = pull.ClosesOn,
                    TimeZone = _scenario.Plan.TimeZone,
                }),
            ],
            now);
        await evaluation.HeldFilesAsync(session, now);
    }

    private static async Task<List<int>> NumbersAsync(WarehouseSession session, string sql) =>
        (await session.Connection.QueryAsync<int>(sql, transaction: session.Transaction)).AsList();

    /// <summary>A clock that stands still between steps.</summary>
    private sealed class SteppedTime(DateTimeOffset start) : TimeProvider
    {
        private DateTimeOffset _now = start;

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;

        public override DateTimeOffset GetUtcNow() => _now;

        public override long GetTimestamp() => _now.UtcTicks;

        public void Step(TimeSpan by) => _now += by;
    }
}
