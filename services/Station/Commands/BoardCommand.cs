using LabPipeline.Board.Serving;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Opens the lab's web pages alone, beside a pipeline that runs elsewhere or not at all.</summary>
internal sealed class BoardCommand(IAnsiConsole console) : AsyncCommand<StationSettings>
{
    public override Task<int> ExecuteAsync(CommandContext context, StationSettings settings, CancellationToken cancellationToken) =>
        BoardHost.RunAsync([.. context.Remaining.Raw, "--Lab:DataFolder", settings.Data], console.Profile.Out.Writer, Console.Error);
}
