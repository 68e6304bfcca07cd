using System.Data.Common;
using System.Diagnostics.Metrics;
using LabPipeline.Board.Office;
using LabPipeline.Hosting;
using LabPipeline.Warehouse;
using Microsoft.Extensions.Options;

namespace LabPipeline.Board.Serving;

/// <summary>How the pipeline does, as measurements: whoever watches the board's <c>/metrics</c> watches every service.</summary>
internal sealed class LabMeter : BackgroundService
{
    public const string Name = "LabPipeline";

    private static readonly TimeSpan LookEvery = TimeSpan.FromSeconds(15);

    private readonly LabWarehouse _warehouse;
    private readonly TimeProvider _time;
    private readonly ILogger<LabMeter> _log;
    private readonly Meter _meter;
    private PipelineState _state = PipelineState.Nothing;

    public LabMeter(LabWarehouse warehouse, IOptions<LabOptions> lab, IMeterFactory meters, TimeProvider time, ILogger<LabMeter> log)
    {
        _warehouse = warehouse;
        _time = time;
        _log = log;
        _meter = meters.Create(Name);
        var drive = Path.GetFullPath(lab.Value.DataFolder);
        _meter.CreateObservableGauge("labpipeline.outbox.waiting", () => _state.Unpublished, "{message}", "Messages that wait to be published.");
        _meter.CreateObservableGauge("labpipeline.outbox.oldest", () => _state.OldestUnpublished?.TotalSeconds ?? 0, "s", "How long the oldest of them has waited.");
        _meter.CreateObservableGauge("labpipeline.messages.parked", () => _state.Parked, "{message}", "Messages that could not be handled and wait for a person.");
        _meter.CreateObservableGauge("labpipeline.service.silence", Silences, "s", "Time since a service's last sign of life.");
        _meter.CreateObservableGauge("labpipeline.data.free", () => new DriveInfo(drive).AvailableFreeSpace, "By", "Room left where the data folder lies.");
    }

    public override void Dispose()
    {
        _meter.Dispose();
        base.Dispose();
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                _state = await _warehouse.ReadAsync(session => PipelineState.ReadAsync(session, _time.GetUtcNow()), stoppingToken);
            }
            catch (DbException exception)
            {
                _log.LogWarning(exception, "MeasurementDelayed");
            }

            await Task.Delay(LookEvery, _time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private IEnumerable<Measurement<double>> Silences() =>
        _state.Services.Select(service => new Measurement<double>(service.Age.TotalSeconds, new KeyValuePair<string, object?>("service", service.Beat.Service)));
}
