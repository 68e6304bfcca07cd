using System.Diagnostics.Metrics;
using LabPipeline.Board.Serving;
using LabPipeline.Hosting;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using Microsoft.Extensions.Options;
using Microsoft.Extensions.Time.Testing;

namespace LabPipeline.Board.Tests.Serving;

/// <summary>The database goes away under a running board; whoever watches it is told, and it measures again afterwards.</summary>
public sealed class OutageTests
{
    private static readonly Heartbeat Beat = new() { Service = "quality", StartedAt = RunningBoard.Now, BeatAt = RunningBoard.Now };

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Health_WhileTheDatabaseIsAway_IsDegradedAndSaysWhy()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync();
        await scratch.Warehouse.WriteAsync(session => HeartbeatStore.BeatAsync(session, Beat), Stop);
        var database = new OutageDialect(scratch.Warehouse.Dialect) { IsAway = true };
        using var warehouse = new LabWarehouse(database, TimeProvider.System);
        var check = new PipelineCheck(warehouse, new FixedTime(RunningBoard.Now));

        var during = await check.CheckHealthAsync(new HealthCheckContext(), Stop);
        database.IsAway = false;
        var after = await check.CheckHealthAsync(new HealthCheckContext(), Stop);

        Assert.Equal((HealthStatus.Degraded, "The warehouse could not be asked."), (during.Status, during.Description));
        Assert.Equal(HealthStatus.Healthy, after.Status);
    }

    [Fact]
    public async Task Meter_WhenTheDatabaseIsAwayForAWhile_MeasuresAgainAfterwards()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync();
        await scratch.Warehouse.WriteAsync(session => HeartbeatStore.BeatAsync(session, Beat), Stop);
        var database = new OutageDialect(scratch.Warehouse.Dialect) { IsAway = true };
        using var warehouse = new LabWarehouse(database, TimeProvider.System);
        await using var services = new ServiceCollection().AddMetrics().BuildServiceProvider();
        var (meters, time, log) = (services.GetRequiredService<IMeterFactory>(), new FakeTimeProvider(RunningBoard.Now), new LogBook<LabMeter>());
        using var meter = new LabMeter(warehouse, Options.Create(new LabOptions { DataFolder = Path.GetTempPath() }), meters, time, log);
        await meter.StartAsync(Stop);
        await log.WaitForAsync("MeasurementDelayed");
        Assert.Empty(Silences(meters));

        database.IsAway = false;
        await Wait.UntilAsync(() => Task.FromResult(Silences(meters).Count == 1), () => time.Advance(TimeSpan.FromSeconds(15)));

        Assert.InRange(Silences(meters)[0], 15, 3600);
        await meter.StopAsync(Stop);
    }

    /// <summary>The silence of each service, as measured by the meter of <paramref name="meters"/> alone.</summary>
    private static List<double> Silences(IMeterFactory meters)
    {
        var found = new List<double>();
        using var listener = new MeterListener
        {
            InstrumentPublished = (instrument, listener) =>
            {
                if (instrument.Name == "labpipeline.service.silence" && ReferenceEquals(instrument.Meter.Scope, meters))
                {
                    listener.EnableMeasurementEvents(instrument);
                }
            },
        };
        listener.SetMeasurementEventCallback<double>((_, value, _, _) => found.Add(value));
        listener.Start();
        listener.RecordObservableInstruments();
        return found;
    }
}
