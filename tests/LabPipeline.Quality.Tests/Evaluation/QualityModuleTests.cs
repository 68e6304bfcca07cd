using LabPipeline.Contracts.V1;
using LabPipeline.Hosting;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Dialects;
using LabPipeline.Warehouse.Facts;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace LabPipeline.Quality.Tests.Evaluation;

/// <summary>The whole service on its bus: a message in the outbox leads to results, alerts and a message for others.</summary>
public sealed class QualityModuleTests : IAsyncLifetime
{
    // Generous: the machine that runs the tests may be busy; a sound run needs a second.
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private static readonly DateTimeOffset BenchDay = new(2026, 10, 6, 15, 0, 0, TimeSpan.Zero);

    private readonly ScratchFolder _folder = new();
    private QualityLab _lab = null!;
    private IHost _host = null!;

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _lab = await QualityLab.CreateAsync(TimeProvider.System, withPlan: false);
        var builder = Host.CreateApplicationBuilder();
        builder.Configuration[$"{LabOptions.Section}:{nameof(LabOptions.DataFolder)}"] = _folder.Path;
        builder.Services.AddSingleton<IWarehouseDialect>(_lab.Warehouse.Dialect);
        LabHost.Compose(builder, new QualityModule());
        _host = builder.Build();
        await LabHost.PrepareAsync(_host.Services, Token);
    }

    public async ValueTask DisposeAsync()
    {
        await _host.StopAsync(CancellationToken.None);
        _host.Dispose();
        await _lab.DisposeAsync();
        _folder.Dispose();
    }

    [Fact]
    public async Task Messages_OfReadingsAndRefusals_ReachResultsAndAlerts()
    {
        await _lab.LoadPlanAsync();
        var barcode = _lab.Barcode(0);
        var stored = await _lab.StoreAsync("sugars.csv", [.. QualityLab.Sugars(barcode, 0.182m, 0.231m, BenchDay)]);
        await _lab.SendRecordedAsync(stored, barcode);
        var refused = await _lab.StoreAsync("broken.csv", [], FileState.Refused, "line 4: '4,6'");
        await _lab.SendAsync(new FileRefused(refused, "broken.csv", "number"), "refused");

        await _host.StartAsync(Token);

        await UntilAsync(async () => (await _lab.AlertsAsync()).Count == 2);
        Assert.Equal(["duplicate disagreement", "file refused"], (await _lab.AlertsAsync()).Select(alert => alert.RuleName).Order());
        Assert.Single(await _lab.ResultsAsync(barcode));
        Assert.Equal(2, (await _lab.SentAsync<QcAlertRaised>()).Count);

        await _lab.WriteAsync(async session =>
        {
            await FileCorrections.TakeOutAsync(session, new SourceFile { FileId = stored, Name = "sugars.csv" }, "lab manager", "wrong flask", TimeProvider.System.GetUtcNow());
            return true;
        });
        await UntilAsync(async () => (await _lab.AlertsAsync()).Any(alert => alert.State == AlertStates.Cleared));
        Assert.Empty(await _lab.ResultsAsync(barcode));
    }

    [Fact]
    public async Task Readings_ThatWaitedForTheirPlan_JoinWhenItIsLoaded()
    {
        var barcode = _lab.Barcode(0);
        var waiting = await _lab.StoreAsync("sugars.csv", [.. QualityLab.Sugars(barcode, 0.182m, 0.231m, BenchDay)], FileState.Waiting);
        await _lab.SendRecordedAsync(waiting, barcode);
        await _host.StartAsync(Token);
        await UntilAsync(async () => (await _lab.AlertsAsync()).Count == 1);
        Assert.Equal("unknown barcode", (await _lab.AlertsAsync())[0].RuleName);

        await _lab.LoadPlanAsync();

        await UntilAsync(async () => (await _lab.AlertsAsync()).Count == 2);
        Assert.Equal(
            [("unknown barcode", AlertStates.Cleared), ("duplicate disagreement", AlertStates.Open)],
            (await _lab.AlertsAsync()).Select(alert => (alert.RuleName, alert.State)));
        Assert.Single(await _lab.ResultsAsync(barcode));
    }

    private static async Task UntilAsync(Func<Task<bool>> condition)
    {
        using var limit = new CancellationTokenSource(Patience);
        while (!await condition())
        {
            await Task.Delay(50, limit.Token);
        }
    }
}
