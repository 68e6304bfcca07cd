using System.ComponentModel;
using System.Globalization;
using LabPipeline.Quality.Evaluation;
using LabPipeline.Quality.Rules;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Thresholds;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Sets thresholds of a trial.</summary>
internal sealed class ThresholdsSetCommand(IAnsiConsole console) : AsyncCommand<ThresholdsSetCommand.Settings>
{
    private const string Default = "default";

    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var quantity = QuantityCatalogue.Find(settings.Quantity)
            ?? throw new StationException(ExitCode.NotFound, $"There is no quantity '{settings.Quantity}'; docs/data-dictionary.md and v_reading list their names.");
        Require(settings, quantity);
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        foreach (var (kind, text) in settings.Given)
        {
            await warehouse.WriteAsync(session => SetAsync(session, settings, quantity, kind, Read(kind, text)), cancellationToken);
            console.MarkupLineInterpolated($"Trial {settings.Trial}: {kind} of {quantity.Name} is {text}.");
        }

        console.MarkupLine("The running station judges the trial's samples anew.");
        return ExitCode.Done;
    }

    private static async Task<ThresholdRow> SetAsync(WarehouseSession session, Settings settings, Quantity quantity, string kind, decimal? value)
    {
        if (!await TrialNames.ExistsAsync(session, settings.Trial))
        {
            throw new StationException(ExitCode.NotFound, $"There is no trial '{settings.Trial}'; load its plan first.");
        }

        var now = TimeProvider.System.GetUtcNow();
        return await ThresholdStore.SetAsync(session, new ThresholdRow
        {
            TrialCode = settings.Trial,
            QuantityId = quantity.Id,
            Kind = kind,
            Value = value,
            InForceFrom = ChartSettings.FromDate(settings.From, now),
            SetAt = now,
            SetBy = settings.By,
            Why = settings.Why,
        });
    }

    private static void Require(Settings settings, Quantity quantity)
    {
        if (!ThresholdScope.IsOfTrial(quantity))
        {
            throw new StationException(ExitCode.Faults, $"{quantity.Name} belongs to a fry batch, not to a trial; its window is that of the method.");
        }

        if (settings.Shift is not null && !ThresholdScope.Knows(quantity, ThresholdKinds.Shift))
        {
            throw new StationException(ExitCode.Faults, $"--shift is for specific_gravity, found {quantity.Name}; only weighing sessions are compared as a whole.");
        }

        if (settings is { Low: { } low, High: { } high } && Read(ThresholdKinds.Low, low) > Read(ThresholdKinds.High, high))
        {
            throw new StationException(ExitCode.Faults, $"--low {low} lies above --high {high}; nothing was changed.");
        }
    }

    private static decimal? Read(string kind, string text) => text == Default ? null
        : decimal.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value) ? value
        : throw new StationException(ExitCode.Failed, $"--{kind} is '{text}'; expected a number with a decimal point, or 'default'.");

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : SignedSettings
    {
        [CommandArgument(0, "<TRIAL>")]
        [Description("Code of the trial.")]
        public string Trial { get; init; } = "";

        [CommandArgument(1, "<QUANTITY>")]
        [Description("The quantity, such as glucose or mean_cleaned_surface.")]
        public string Quantity { get; init; } = "";

        [CommandOption("--low <VALUE>")]
        [Description("Lowest value that is not told; 'default' goes back.")]
        public string? Low { get; init; }

        [CommandOption("--high <VALUE>")]
        [Description("Highest value that is not told; 'default' goes back.")]
        public string? High { get; init; }

        [CommandOption("--shift <VALUE>")]
        [Description("Largest shift of a weighing session; 'default' goes back.")]
        public string? Shift { get; init; }

        [CommandOption("--from <DATE>")]
        [Description("First day (UTC) on which it decides; from now on when left out.")]
        public string? From { get; init; }

        public IEnumerable<(string Kind, string Text)> Given => new[] { (ThresholdKinds.Low, Low), (ThresholdKinds.High, High), (ThresholdKinds.Shift, Shift) }
            .Where(given => given.Item2 is not null)
            .Select(given => (given.Item1, given.Item2!));

        public override ValidationResult Validate() => Given.Any()
            ? base.Validate()
            : ValidationResult.Error("Nothing to set; expected --low, --high or --shift.");
    }
}
