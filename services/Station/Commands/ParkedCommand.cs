using System.Globalization;
using LabPipeline.Warehouse.Machinery;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Lists the messages that could not be handled.</summary>
internal sealed class ParkedCommand(IAnsiConsole console) : AsyncCommand<StationSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, StationSettings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var parked = await warehouse.ReadAsync(ParkedMessageStore.ListAsync, cancellationToken);
        var table = new Table().AddColumns("no.", "since (UTC)", "queue", "message", "times", "why it failed");
        foreach (var message in parked)
        {
            table.AddRow(new[]
            {
                message.ParkedId.ToString(CultureInfo.InvariantCulture),
                message.ParkedAt.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture),
                message.Endpoint,
                message.Type[(message.Type.LastIndexOf('.') + 1)..],
                message.TimesParked.ToString(CultureInfo.InvariantCulture),
                message.Reason,
            }.Select(Markup.Escape).ToArray());
        }

        console.Write(table);
        console.MarkupLineInterpolated($"{parked.Count} messages wait. 'station replay NUMBER --by NAME --why REASON' hands one over again, '--all' every one.");
        return ExitCode.Done;
    }
}
