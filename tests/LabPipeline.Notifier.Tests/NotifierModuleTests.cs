using System.Globalization;
using Dapper;
using LabPipeline.Contracts.V1;
using LabPipeline.Hosting;
using LabPipeline.Hosting.Bus;
using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Deliveries;
using LabPipeline.Notifier.Settings;
using LabPipeline.Notifier.Tests.Doubles;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Options;

namespace LabPipeline.Notifier.Tests;

public sealed class NotifierModuleTests : IDisposable
{
    private readonly ScratchFolder _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Module_WhenAnAlertIsInTheOutbox_MailsItAndWritesItDown()
    {
        await using var server = new MailboxServer();
        using var host = Build(new Dictionary<string, string?>
        {
            ["Notifier:SmtpHost"] = "127.0.0.1",
            ["Notifier:SmtpPort"] = server.Port.ToString(CultureInfo.InvariantCulture),
            ["Notifier:SmtpSecurity"] = "none",
            ["Notifier:MailFrom"] = "quality@lab.example",
            ["Notifier:Emails:lab-manager:To"] = "manager@lab.example",
        });
        await LabHost.PrepareAsync(host.Services, Stop);
        await host.StartAsync(Stop);
        var alert = new AlertRow(17);
        var now = host.Services.GetRequiredService<TimeProvider>().GetUtcNow();
        await host.Services.GetRequiredService<LabWarehouse>().WriteAsync(
            async session =>
            {
                await AlertRow.AddAsync(session, alert, now);
                await OutboxStore.AddAsync(session, new QcAlertRaised(17, 1, alert.Rule, alert.Level, alert.Headline), "alert 17", now);
            },
            Stop);
        host.Services.GetRequiredService<RelaySignal>().Wake();

        var file = _folder.File(AlertFileChannel.FileName);
        for (var tries = 0; tries < 500 && (server.Mails.Count == 0 || !File.Exists(file) || new FileInfo(file).Length == 0); tries++)
        {
            await Task.Delay(20, Stop);
        }

        await host.StopAsync(Stop);
        Assert.EndsWith("(alert 17)", Assert.Single(server.Mails).Subject, StringComparison.Ordinal);
        Assert.Contains("\"alert\":17", Assert.Single(await File.ReadAllLinesAsync(file, Stop)), StringComparison.Ordinal);
    }

    /// <summary>Without the bell every alert waits for the couriers' timer: half of five seconds on average.</summary>
    [Fact]
    public async Task Module_WhenAnAlertIsRaisedOrCleared_RingsForTheCouriers()
    {
        using var host = Build([]);
        await LabHost.PrepareAsync(host.Services, Stop);
        await host.StartAsync(Stop);
        var alert = new AlertRow(17);
        await host.Services.GetRequiredService<LabWarehouse>().WriteAsync(session => AlertRow.AddAsync(session, alert, TimeProvider.System.GetUtcNow()), Stop);

        await RequireRingAsync(host.Services, new QcAlertRaised(17, 1, alert.Rule, alert.Level, alert.Headline));
        await RequireRingAsync(host.Services, new QcAlertCleared(17, 1, alert.Rule));
        await host.StopAsync(Stop);
    }

    [Fact]
    public async Task Module_WhenTheSettingsAreWrong_DoesNotStartAndSaysWhy()
    {
        using var host = Build(new Dictionary<string, string?> { ["Notifier:Emails:lab-manager:To"] = "nobody" });

        var fault = await Assert.ThrowsAsync<OptionsValidationException>(() => host.StartAsync(Stop));

        Assert.Equal(3, fault.Failures.Count());
    }

    [Fact]
    [Shows(75)]
    public void Module_WhenAPasswordIsWrittenIntoTheSettings_RefusesThemWithoutRepeatingIt()
    {
        using var host = Build(new Dictionary<string, string?> { ["Notifier:SmtpPassword"] = "hunter-seven-42" });

        var fault = Assert.Throws<InvalidOperationException>(() => host.Services.GetRequiredService<IOptions<NotifierOptions>>().Value);

        Assert.Contains("SmtpPassword", fault.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("hunter-seven-42", fault.ToString(), StringComparison.Ordinal);
    }

    private static async Task RequireRingAsync<TMessage>(IServiceProvider services, TMessage message)
        where TMessage : class
    {
        var ring = services.GetRequiredService<DeliverySignal>().Next;
        await services.GetRequiredService<LabWarehouse>().WriteAsync(
            session => OutboxStore.AddAsync(session, message, "alert 17", TimeProvider.System.GetUtcNow()), Stop);
        services.GetRequiredService<RelaySignal>().Wake();
        await ring.WaitAsync(TimeSpan.FromSeconds(30), Stop);
    }

    private IHost Build(Dictionary<string, string?> settings)
    {
        settings["Lab:DataFolder"] = _folder.Path;
        var builder = Host.CreateEmptyApplicationBuilder(null);
        builder.Configuration.AddInMemoryCollection(settings);
        LabHost.Compose(builder, new NotifierModule());
        return builder.Build();
    }
}
