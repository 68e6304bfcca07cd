using System.ComponentModel;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Results;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Notes that a sample has no tissue left for another extract: the repeatability procedure ends with what there is.</summary>
internal sealed class NoMoreExtractsCommand(IAnsiConsole console) : AsyncCommand<NoMoreExtractsCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var barcode = settings.Barcode.Trim().ToUpperInvariant();
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        if (await warehouse.ReadAsync(session => TrailStore.FindSampleAsync(session, barcode), cancellationToken) is null)
        {
            throw new StationException(ExitCode.NotFound, $"No plan holds '{barcode}'; check the tag.");
        }

        await warehouse.WriteAsync(
            async session =>
            {
                await ExtractEndStore.EndAsync(session, barcode, settings.By, settings.Why, TimeProvider.System.GetUtcNow());
                return true;
            },
            cancellationToken);
        console.MarkupLineInterpolated($"No further extract of {barcode}: {settings.Why}. Of three that disagree the middle one stands; two that disagree stay unresolved.");
        return ExitCode.Done;
    }

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : SignedSettings
    {
        [CommandArgument(0, "<BARCODE>")]
        [Description("The sample's barcode.")]
        public string Barcode { get; init; } = "";
    }
}
