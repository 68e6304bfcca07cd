using System.ComponentModel;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Facts;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Sets readings of a sample aside for a physical reason.</summary>
internal sealed class SetAsideCommand(IAnsiConsole console) : AsyncCommand<SetAsideCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var barcode = settings.Barcode.Trim().ToUpperInvariant();
        var quantity = QuantityCatalogue.Find(settings.Quantity)
            ?? throw new StationException(ExitCode.NotFound, $"There is no quantity '{settings.Quantity}'; 'station trail {barcode}' shows the names.");
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var count = await warehouse.WriteAsync(
            session => ReadingExclusions.SetAsideAsync(session, barcode, quantity.Id, settings.Extract, settings.By, settings.Why, TimeProvider.System.GetUtcNow()),
            cancellationToken);
        if (count == 0)
        {
            throw new StationException(ExitCode.NotFound, $"Sample {barcode} has no such reading of {quantity.Name} in effect; nothing was changed.");
        }

        console.MarkupLineInterpolated($"{count} readings of {quantity.Name} of {barcode} are set aside by {settings.By}: {settings.Why}");
        return ExitCode.Done;
    }

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : SignedSettings
    {
        [CommandArgument(0, "<BARCODE>")]
        [Description("The sample's barcode.")]
        public string Barcode { get; init; } = "";

        [CommandOption("--quantity <NAME>")]
        [Description("The quantity to set aside, such as glucose_in_extract.")]
        public string Quantity { get; init; } = "";

        [CommandOption("--extract <NAME>")]
        [Description("Only this extract.")]
        public string? Extract { get; init; }
    }
}
