using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace LabPipeline.Hosting.Tests;

public sealed class LabHostTests
{
    [Fact]
    public async Task Run_WhenToldToStopWhileStarting_EndsWhatHadStartedAndReturns()
    {
        var first = new Noting();
        var builder = Host.CreateEmptyApplicationBuilder(null);
        builder.Services.AddSingleton<IHostedService>(first);
        builder.Services.AddSingleton<IHostedService>(services => new StoppedAtItsStart(services.GetRequiredService<IHostApplicationLifetime>()));
        using var host = builder.Build();

        await LabHost.RunAsync(host, TestContext.Current.CancellationToken);

        Assert.Equal(["started", "stopped"], first.Heard);
    }

    private sealed class Noting : IHostedService
    {
        public List<string> Heard { get; } = [];

        public Task StartAsync(CancellationToken cancellationToken)
        {
            Heard.Add("started");
            return Task.CompletedTask;
        }

        public Task StopAsync(CancellationToken cancellationToken)
        {
            Heard.Add("stopped");
            return Task.CompletedTask;
        }
    }

    /// <summary>Is still starting, as one that waits for its database, when somebody ends the program.</summary>
    private sealed class StoppedAtItsStart(IHostApplicationLifetime lifetime) : IHostedService
    {
        public Task StartAsync(CancellationToken cancellationToken)
        {
            lifetime.StopApplication();
            return Task.Delay(Timeout.Infinite, cancellationToken);
        }

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
    }
}
