using System.Data.Common;
using LabPipeline.Hosting.Health;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Options;

namespace LabPipeline.Hosting;

/// <summary>One service as a process of its own: run it, or ask whether the running one lives.</summary>
public static class ServiceProcess
{
    private const string Health = "health";

    /// <summary>
    /// Runs <paramref name="module"/> until the process is told to stop. With <c>health</c> as the first argument it asks the warehouse
    /// instead for the service's last sign of life, as a container or a supervisor wants to know it.
    /// </summary>
    /// <returns>The exit code: 0, or 1 with one line for the person who started it.</returns>
    public static async Task<int> RunAsync(string[] args, ILabModule module, TextWriter output, TextWriter errors)
    {
        try
        {
            return args is [Health, ..]
                ? await AnswerAsync(args[1..], module, output, errors).ConfigureAwait(false)
                : await RunAsync(args, module).ConfigureAwait(false);
        }
        catch (Exception exception) when (exception is OptionsValidationException or InvalidOperationException or IOException or UnauthorizedAccessException or DbException)
        {
            var what = args is [Health, ..] ? "cannot say whether it lives" : "does not start";
            await errors.WriteLineAsync($"{module.Name} {what}. {exception.Message}").ConfigureAwait(false);
            return 1;
        }
    }

    private static async Task<int> RunAsync(string[] args, ILabModule module)
    {
        var builder = Host.CreateApplicationBuilder(args);
        LabHost.Compose(builder, module);
        using var host = builder.Build();
        await LabHost.PrepareAsync(host.Services, CancellationToken.None).ConfigureAwait(false);
        await LabHost.RunAsync(host, CancellationToken.None).ConfigureAwait(false);
        return 0;
    }

    private static async Task<int> AnswerAsync(string[] args, ILabModule module, TextWriter output, TextWriter errors)
    {
        var builder = Host.CreateApplicationBuilder(args);
        LabHost.ComposeReader(builder);
        using var host = builder.Build();
        var now = host.Services.GetRequiredService<TimeProvider>().GetUtcNow();
        var beats = await host.Services.GetRequiredService<LabWarehouse>().ReadAsync(HeartbeatStore.ListAsync, CancellationToken.None).ConfigureAwait(false);
        if (HealthQuestion.WhyNot(module.Name, beats, now) is { } fault)
        {
            await errors.WriteLineAsync(fault).ConfigureAwait(false);
            return 1;
        }

        await output.WriteLineAsync($"{module.Name} is alive.").ConfigureAwait(false);
        return 0;
    }
}
