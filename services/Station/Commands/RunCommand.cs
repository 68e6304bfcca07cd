using LabPipeline.Hosting;
using Microsoft.Extensions.Hosting;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Runs the whole pipeline in this process.</summary>
internal sealed class RunCommand(IAnsiConsole console) : AsyncCommand<StationSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, StationSettings settings, CancellationToken cancellationToken)
    {
        var lab = settings.Lab;
        using var host = StationHost.Build(settings.Data);
        await LabHost.PrepareAsync(host.Services, cancellationToken);
        await SampleProfiles.PlaceMissingAsync(lab.ProfileFolder, cancellationToken);
        console.MarkupLineInterpolated($"Instruments drop files into [bold]{lab.DropFolder}[/]; alerts go to [bold]{Path.Combine(lab.DataFolder, "alerts.jsonl")}[/].");
        console.MarkupLine("Press Ctrl+C to stop.");
        await host.RunAsync(cancellationToken);
        return ExitCode.Done;
    }
}
