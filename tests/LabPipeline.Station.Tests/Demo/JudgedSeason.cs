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
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Plan;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;

namespace LabPipeline.Station.Tests.Demo;

/// <summary>A season taken by intake and judged by every rule, with the clock in the test's hands.</summary>
public abstract class JudgedSeason(bool clean) : IAsyncLifetime
{
    private static readonly DateTimeOffset Start = new(2026, 5, 20, 12, 0, 0, TimeSpan.Zero);

    private readonly ScratchFolder _folder = new();
    private readonly SteppedTime _time = new(Start);
    private ScratchWarehouse _scratch = null!;

    public DemoScenario Scenario { get; } = DemoScenario.Create(clean);

    /// <summary>Alerts that are open at the end.</summary>
    public IReadOnlyList<Alert> Alerts { get; private set; } = [];

    public IReadOnlyList<ArrivalListing> Arrivals { get; private set; } = [];

    public LabWarehouse Warehouse => _scratch.Warehouse;

    public async ValueTask InitializeAsync()
    {
        _scratch = await ScratchWarehouse.CreateAsync(_time);
        var token = TestContext.Current.CancellationToken;
        await _scratch.Warehouse.WriteAsync(session => DemoPreparation.PrepareAsync(session, Scenario, Start), token);
        await TakeFilesAsync(token);
        await _scratch.Warehouse.WriteAsync(JudgeAsync, token);
        Alerts = await _scratch.Warehouse.ReadAsync(
            session => AlertStore.ListAsync(session, new AlertFilter { State = AlertStates.Open, Most = 10_000 }), token);
        Arrivals = await _scratch.Warehouse.ReadAsync(session => ArrivalListStore.ListAsync(session, null), token);
    }

    public async ValueTask DisposeAsync()
    {
        await _scratch.DisposeAsync();
        _folder.Dispose();
        GC.SuppressFinalize(this);
    }

    /// <summary>Two looks at every folder, a minute apart: the first sees the files, the second takes those that kept quiet.</summary>
    private async Task TakeFilesAsync(CancellationToken token)
    {
        var lab = new LabOptions { DataFolder = _folder.Path };
        new DemoWriter(lab).Write(Scenario);
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
        string[] samples = [.. PlanSamples.Of(Scenario.Plan).Select(sample => sample.Barcode.Text)];
        await evaluation.ControlsAsync(session, runs, now);
        await evaluation.SamplesAsync(session, samples, now);
        await evaluation.OrdersAsync(session, samples, now);
        await evaluation.RunsAsync(session, runs, now);
        await evaluation.FilesAsync(session, await NumbersAsync(session, "select file_id from source_file"), now);
        await evaluation.PullsAsync(session, [.. Scenario.Plan.Pulls.Select(Planned)], now);
        await evaluation.HeldFilesAsync(session, now);
    }

    private PlannedPull Planned(TrialPull pull) => new()
    {
        TrialCode = Scenario.Plan.Code,
        PullNo = pull.Number,
        DueOn = pull.DueOn,
        OpensOn = pull.OpensOn,
        ClosesOn = pull.ClosesOn,
        TimeZone = Scenario.Plan.TimeZone,
    };

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
