using System.ComponentModel;
using LabPipeline.Reporting.Bench;
using LabPipeline.Warehouse.Plan;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Draws, keeps and prints the order in which a pull is analysed or fried.</summary>
internal sealed class BenchOrderCommand(IAnsiConsole console) : AsyncCommand<BenchOrderCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var pull = await settings.FindAsync(warehouse, cancellationToken);
        var now = TimeProvider.System.GetUtcNow();
        var kept = await warehouse.ReadAsync(session => BenchOrderStore.FindAsync(session, pull.TrialCode, pull.PullNo, settings.Kind), cancellationToken);
        var order = kept is not null && settings.Seed is null && string.IsNullOrWhiteSpace(settings.Why)
            ? RequireComplete(kept, pull)
            : await warehouse.WriteAsync(session => DrawAsync(session, pull, settings, now), cancellationToken);
        await settings.WriteAsync(console, BenchSheet.ToCsv(order), () => BenchSheet.Pdf(order, settings.ControlEvery, now), cancellationToken);
        if (settings.Out is not null)
        {
            console.MarkupLineInterpolated($"{order.Kind} of pull {order.PullNo}: draw {order.DrawNo}, seed {order.Seed}, {order.Places.Count} samples ({order.Why}).");
        }

        return ExitCode.Done;
    }

    private static async Task<BenchOrder> DrawAsync(Warehouse.WarehouseSession session, BenchPull pull, Settings settings, DateTimeOffset now)
    {
        var offered = BenchDraw.Of(pull, settings.Kind, settings.Seed ?? BenchDraw.UsualSeed(pull), now, settings.By);
        var keep = await BenchOrderStore.KeepAsync(session, offered, settings.Why);
        return keep.State != BenchOrderState.NeedsReason
            ? keep.InEffect
            : throw new StationException(
                ExitCode.Faults,
                $"The {settings.Kind} order of pull {pull.PullNo} was drawn with seed {keep.InEffect.Seed} by {keep.InEffect.MadeBy} and stays; give --why to draw anew, or leave out --seed to print it again.");
    }

    private static BenchOrder RequireComplete(BenchOrder order, BenchPull pull) =>
        pull.Samples.Select(sample => sample.Barcode).ToHashSet(StringComparer.Ordinal).SetEquals(order.Places.Select(place => place.Barcode))
            ? order
            : throw new StationException(
                ExitCode.Faults, $"The plan has {pull.Samples.Count} samples at pull {pull.PullNo}, the {order.Kind} order {order.Places.Count}: the plan grew since; draw anew with --why.");

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : PullSettings
    {
        [CommandOption("--kind <KIND>")]
        [Description("analysis or frying.")]
        public string Kind { get; init; } = "";

        [CommandOption("--seed <NUMBER>")]
        [Description("Seed of a draw; the due day as a number when left out.")]
        public long? Seed { get; init; }

        [CommandOption("--control-every <NUMBER>")]
        [Description("Samples between control checks on the printed sheet.")]
        [DefaultValue(10)]
        public int ControlEvery { get; init; } = 10;

        [CommandOption("--by <NAME>")]
        [Description("Your name, for the change log.")]
        public string By { get; init; } = Environment.UserName;

        [CommandOption("--why <REASON>")]
        [Description("Why an order that was drawn is drawn anew.")]
        public string? Why { get; init; }

        public override ValidationResult Validate() =>
            !BenchOrderKinds.All.Contains(Kind, StringComparer.Ordinal) ? ValidationResult.Error($"--kind is {(Kind.Length == 0 ? "missing" : $"'{Kind}'")}; expected analysis or frying.")
            : Seed is < 0 or > TrialDesign.LargestSeed ? ValidationResult.Error($"--seed is {Seed}; expected a whole number from 0 to {TrialDesign.LargestSeed}.")
            : ControlEvery is < 1 or > 1000 ? ValidationResult.Error($"--control-every is {ControlEvery}; expected 1 to 1000.")
            : base.Validate();
    }
}
