using System.ComponentModel;
using System.Globalization;
using LabPipeline.Warehouse.Facts;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Lists arrivals.</summary>
internal sealed class ArrivalsCommand(IAnsiConsole console) : AsyncCommand<ArrivalsCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var rows = await warehouse.ReadAsync(session => ArrivalListStore.ListAsync(session, settings.State), cancellationToken);
        var table = new Table().AddColumns("arrived (UTC)", "folder", "file", "state", "new", "repeated", "conflicting", "parked", "reason");
        foreach (var row in rows.Take(settings.Most))
        {
            table.AddRow(new[]
            {
                row.ArrivedAt.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture),
                row.Folder,
                row.Name,
                row.State,
                Text(row.NewCount),
                Text(row.RepeatedCount),
                Text(row.ConflictingCount),
                Text(row.ParkedCount),
                row.Reason ?? "",
            }.Select(Markup.Escape).ToArray());
        }

        console.Write(table);
        var states = string.Join(", ", rows.CountBy(row => row.State).OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => $"{pair.Value} {pair.Key}"));
        console.MarkupLineInterpolated($"{rows.Count} arrivals: {states}.");
        if (rows.Count > settings.Most)
        {
            console.MarkupLineInterpolated($"The newest {settings.Most} are shown; --most shows more, --state narrows the list.");
        }

        return ExitCode.Done;
    }

    private static string Text(int number) => number == 0 ? "" : number.ToString(CultureInfo.InvariantCulture);

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : StationSettings
    {
        [CommandOption("--state <STATE>")]
        [Description("Only this state: stored, duplicate, refused, waiting, taken out.")]
        public string? State { get; init; }

        [CommandOption("--most <COUNT>")]
        [Description("How many to show.")]
        [DefaultValue(50)]
        public int Most { get; init; } = 50;

        public override ValidationResult Validate() =>
            State is null or FileState.Stored or "duplicate" or FileState.Refused or FileState.Waiting or FileState.TakenOut
                ? ValidationResult.Success()
                : ValidationResult.Error($"--state is '{State}'; expected stored, duplicate, refused, waiting or 'taken out'.");
    }
}
