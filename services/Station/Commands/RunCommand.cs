using System.ComponentModel;
using LabPipeline.Board.Serving;
using LabPipeline.Hosting;
using Microsoft.AspNetCore.Builder;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Runs the whole pipeline in this process, and the board beside it.</summary>
internal sealed class RunCommand(IAnsiConsole console) : AsyncCommand<RunCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var lab = settings.Lab;
        using var host = StationHost.Build(settings.Data);
        await LabHost.PrepareAsync(host.Services, cancellationToken);
        await SampleProfiles.PlaceMissingAsync(lab.ProfileFolder, cancellationToken);
        console.MarkupLineInterpolated($"Instruments drop files into [bold]{lab.DropFolder}[/]; alerts go to [bold]{Path.Combine(lab.DataFolder, "alerts.jsonl")}[/].");
        await using var board = settings.WithoutBoard ? null : await OpenBoardAsync(settings.Data, cancellationToken);
        console.MarkupLine("Press Ctrl+C to stop.");
        await LabHost.RunAsync(host, cancellationToken);
        return ExitCode.Done;
    }

    /// <summary>A board that cannot open its address must not keep files from being read.</summary>
    private async Task<WebApplication?> OpenBoardAsync(string dataFolder, CancellationToken cancellationToken)
    {
        try
        {
            var board = BoardHost.Build(["--Lab:DataFolder", dataFolder], TimeProvider.System);
            await BoardHost.StartAsync(board, cancellationToken);
            console.MarkupLineInterpolated($"The board is open at [bold]{string.Join(" and ", board.Urls)}[/].");
            return board;
        }
        catch (Exception exception) when (BoardHost.IsForThePerson(exception))
        {
            console.MarkupLineInterpolated($"The board stays closed: {exception.Message} Everything else runs.");
            return null;
        }
    }

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : StationSettings
    {
        [CommandOption("--without-board")]
        [Description("Open no web pages.")]
        public bool WithoutBoard { get; init; }
    }
}
