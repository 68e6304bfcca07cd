using System.ComponentModel;
using System.Globalization;
using LabPipeline.Warehouse.Controls;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>States the target of a control and its tolerance.</summary>
internal sealed class ControlsTargetCommand(IAnsiConsole console) : AsyncCommand<ControlsTargetCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var now = TimeProvider.System.GetUtcNow();
        var row = new ControlLimitRow
        {
            Instrument = settings.Instrument,
            Material = settings.Material,
            QuantityId = settings.Known.Id,
            Kind = ControlLimitKinds.Target,
            Centre = settings.Target,
            Lower = settings.Target - settings.Tolerance,
            Upper = settings.Target + settings.Tolerance,
            InForceFrom = settings.InForceFrom(now),
            DecidedAt = now,
            DecidedBy = settings.By,
            Why = settings.Why,
        };
        await warehouse.WriteAsync(session => ControlLimitStore.KeepAsync(session, row), cancellationToken);
        console.MarkupLineInterpolated(
            CultureInfo.InvariantCulture, $"{row.Material} on {row.Instrument}: {settings.Quantity} from {row.Lower} to {row.Upper} {settings.Known.Unit} is good from {row.InForceFrom:yyyy-MM-dd} on.");
        return ExitCode.Done;
    }

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : ChartSettings
    {
        [CommandOption("--target <VALUE>")]
        [Description("What the control should read, in the quantity's own unit.")]
        public decimal Target { get; init; }

        [CommandOption("--tolerance <VALUE>")]
        [Description("How far off it may read and is still good.")]
        public decimal Tolerance { get; init; }

        public override ValidationResult Validate() => Tolerance > 0m
            ? base.Validate()
            : ValidationResult.Error("--tolerance is missing or not above 0; the certificate of the material states it.");
    }
}
