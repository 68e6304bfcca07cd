using System.Globalization;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Thresholds;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Lists thresholds that trials have set, with their history.</summary>
internal sealed class ThresholdsListCommand(IAnsiConsole console) : AsyncCommand<StationSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, StationSettings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var rows = await warehouse.ReadAsync(ThresholdStore.ListAsync, cancellationToken);
        var table = new Table().AddColumns("trial", "quantity", "limit", "value", "from", "version", "set by", "why");
        foreach (var row in rows)
        {
            var quantity = QuantityCatalogue.Get(row.QuantityId);
            table.AddRow(new[]
            {
                row.TrialCode,
                quantity.Name,
                row.Kind,
                row.Value is { } value ? UnitText.With(value.ToString("0.####", CultureInfo.InvariantCulture), quantity.Unit.Symbol) : "default",
                row.InForceFrom.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                row.Version.ToString(CultureInfo.InvariantCulture),
                string.Create(CultureInfo.InvariantCulture, $"{row.SetBy}, {row.SetAt:yyyy-MM-dd}"),
                row.Why,
            }.Select(Markup.Escape).ToArray());
        }

        console.Write(table);
        console.MarkupLineInterpolated(CultureInfo.InvariantCulture, $"{rows.Count} decisions. Where a trial has set none, the ranges of the quantity catalogue decide.");
        return ExitCode.Done;
    }
}
