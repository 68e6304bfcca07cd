using System.ComponentModel;
using System.Globalization;
using LabPipeline.Hosting.Bus;
using LabPipeline.Warehouse.Machinery;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Hands parked messages over again, by way of the outbox.</summary>
internal sealed class ReplayCommand(IAnsiConsole console) : AsyncCommand<ReplayCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var replayed = await warehouse.WriteAsync(
            async session =>
            {
                var chosen = Choose(await ParkedMessageStore.ListAsync(session), settings);
                foreach (var message in chosen)
                {
                    await ParkedMessageStore.ReplayAsync(session, message, settings.By, settings.Why, TimeProvider.System.GetUtcNow());
                }

                return chosen.Count;
            },
            cancellationToken);
        console.MarkupLineInterpolated($"{replayed} messages go out again while the services run; what fails again is parked again.");
        return ExitCode.Done;
    }

    private static List<ParkedMessage> Choose(IReadOnlyList<ParkedMessage> parked, Settings settings)
    {
        var chosen = parked.Where(message => settings.All || message.ParkedId == settings.Number).ToList();
        if (chosen.Count == 0 && !settings.All)
        {
            throw new StationException(ExitCode.NotFound, $"No parked message has number {settings.Number}; 'station parked' lists them.");
        }

        var unknown = chosen.Where(message => MessageTypes.Find(message.Type) is null).Select(message => message.ParkedId.ToString(CultureInfo.InvariantCulture)).ToList();
        return unknown.Count == 0 ? chosen : throw new StationException(
            ExitCode.Faults,
            $"Message {string.Join(", ", unknown)} is of no type this program knows and cannot be handed over; nothing was changed. Run the program that sent it, or settle the alert with the reason.");
    }

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : SignedSettings
    {
        [CommandArgument(0, "[NUMBER]")]
        [Description("The message's number, as 'station parked' shows it.")]
        public int? Number { get; init; }

        [CommandOption("--all")]
        [Description("Every parked message.")]
        public bool All { get; init; }

        public override ValidationResult Validate() =>
            All == Number.HasValue ? ValidationResult.Error("Name the number of one message, or --all.") : base.Validate();
    }
}
