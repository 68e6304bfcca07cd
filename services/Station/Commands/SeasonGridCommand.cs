using System.ComponentModel;
using System.Globalization;
using LabPipeline.Warehouse.Results;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Prints the season grid of a trial: one line a pull and measurement, one letter a plot.</summary>
internal sealed class SeasonGridCommand(IAnsiConsole console) : AsyncCommand<SeasonGridCommand.Settings>
{
    private static readonly Dictionary<string, char> Letters = new(StringComparer.Ordinal)
    {
        [MeasurementStates.Expected] = '.',
        [MeasurementStates.Done] = '+',
        [MeasurementStates.Late] = 'L',
        [MeasurementStates.Missing] = 'M',
        [MeasurementStates.Excluded] = 'X',
    };

    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var cells = await warehouse.ReadAsync(session => SeasonGridStore.ListAsync(session, settings.Trial), cancellationToken);
        if (cells.Count == 0)
        {
            throw new StationException(ExitCode.NotFound, $"There is no trial '{settings.Trial}', or its plan expects no measurement.");
        }

        ShowGrid(cells);
        ShowExcluded(cells);
        console.MarkupLine("+ done   L late   M missing   X excluded with a reason   . still expected");
        console.MarkupLineInterpolated($"{string.Join(", ", cells.CountBy(cell => cell.State).OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => string.Create(CultureInfo.InvariantCulture, $"{pair.Value} {pair.Key}")))}");
        return ExitCode.Done;
    }

    private void ShowGrid(IReadOnlyList<SeasonGridCell> cells)
    {
        var blocks = cells.Select(cell => cell.Block).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        var table = new Table().AddColumns([.. blocks.Select(block => "block " + block).Prepend("measurement").Prepend("pull")]);
        foreach (var row in cells.GroupBy(cell => (cell.PullNo, cell.Quantity)))
        {
            table.AddRow(
            [
                row.Key.PullNo.ToString(CultureInfo.InvariantCulture),
                Markup.Escape(row.Key.Quantity),
                .. blocks.Select(block => new string([.. row.Where(cell => cell.Block == block).OrderBy(cell => cell.PlotCode, StringComparer.Ordinal).Select(cell => Letters[cell.State])])),
            ]);
        }

        console.Write(table);
    }

    private void ShowExcluded(IReadOnlyList<SeasonGridCell> cells)
    {
        foreach (var cell in cells.Where(cell => cell.Reason.Length > 0))
        {
            console.MarkupLineInterpolated(CultureInfo.InvariantCulture, $"Pull {cell.PullNo}, plot {cell.PlotCode}, {cell.Quantity}: {cell.Reason}");
        }
    }

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : StationSettings
    {
        [CommandArgument(0, "<TRIAL>")]
        [Description("Code of the trial.")]
        public string Trial { get; init; } = "";
    }
}
