using System.ComponentModel;
using System.Globalization;
using LabPipeline.Reporting.Planning;
using LabPipeline.Science.Quantities;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Says how many blocks the variation of an earlier trial asks for.</summary>
internal sealed class PlanAdviceCommand(IAnsiConsole console) : AsyncCommand<PlanAdviceCommand.Settings>
{
    private const double FewDf = 10;

    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var quantity = QuantityCatalogue.Find(settings.Quantity)
            ?? throw new StationException(ExitCode.Failed, $"--quantity is '{settings.Quantity}'; expected the name of a result in the data dictionary, such as glucose.");
        var wanted = settings.Ratio is { } ratio ? new WantedDifference(ratio, IsRatio: true) : new WantedDifference(settings.Difference!.Value, IsRatio: false);
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var errors = await warehouse.ReadAsync(session => SeasonVarianceStore.ListAsync(session, settings.Trial.Trim(), quantity, wanted), cancellationToken)
            ?? throw new StationException(ExitCode.NotFound, $"Trial '{settings.Trial}' is not in the warehouse: there is no variance to go by.");
        if (errors.Count == 0)
        {
            console.MarkupLineInterpolated(
                $"Trial {settings.Trial} holds no {quantity.Name} of two blocks or more: there is no variance to go by, and none is made up. Use a trial that has, or ask the statistician.");
            return ExitCode.NotFound;
        }

        Show(settings, quantity, wanted, [.. errors.Select(error => BlockAdvice.Of(error, settings.Treatments, wanted, settings.Power, settings.Alpha))]);
        return ExitCode.Done;
    }

    private void Show(Settings settings, Quantity quantity, WantedDifference wanted, IReadOnlyList<BlockAdvice> advice)
    {
        var aim = wanted.IsRatio ? Text($"a ratio of {wanted.Amount}") : Text($"a difference of {wanted.Amount} {UnitText.Of(quantity.Unit.Symbol)}");
        console.MarkupLineInterpolated(
            $"To find {aim} in [bold]{quantity.Name}[/] between two of {settings.Treatments} treatments named beforehand, with power {Text($"{settings.Power}")} at level {Text($"{settings.Alpha}")} (two-sided), one plot a treatment and block:");
        var table = new Table().AddColumns("pull", "error", wanted.IsRatio ? "s (log)" : "s", "df", "plots", "blocks needed", "power with 3", "4", "5", "6");
        foreach (var line in advice)
        {
            var error = line.Variance;
            table.AddRow(
            [
                Text($"{error.PullNo}"), Markup.Escape(error.Error), Text($"{Math.Sqrt(error.Variance):0.####}"), Text($"{error.Df:0.#}"), Text($"{error.Plots}"),
                line.Blocks is { } blocks ? Text($"{blocks}") : "over 1000", .. line.Powers.Select(entry => Text($"{entry.Power:0.00}")),
            ]);
        }

        console.Write(table);
        if (advice.Any(line => line.Variance.Df < FewDf))
        {
            console.WriteLine("An error of fewer than 10 degrees of freedom is itself uncertain: plan for more blocks than it asks for.");
        }

        if (advice.Any(line => line.Variance.Censored > 0))
        {
            console.WriteLine("Some plots were at the quantitation limit: their variance is too small, and so are the blocks it asks for.");
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : StationSettings
    {
        [CommandArgument(0, "<TRIAL>")]
        [Description("Code of the earlier trial.")]
        public string Trial { get; init; } = "";

        [CommandOption("--quantity <NAME>")]
        [Description("The result that decides, such as glucose or hunter_l_mean.")]
        public string Quantity { get; init; } = "";

        [CommandOption("--ratio <NUMBER>")]
        [Description("Smallest ratio worth finding, such as 1.25; for sugars.")]
        public double? Ratio { get; init; }

        [CommandOption("--difference <NUMBER>")]
        [Description("Smallest difference worth finding, in the unit of the quantity.")]
        public double? Difference { get; init; }

        [CommandOption("--treatments <NUMBER>")]
        [Description("Treatments of the new trial.")]
        [DefaultValue(12)]
        public int Treatments { get; init; } = 12;

        [CommandOption("--power <NUMBER>")]
        [Description("Wanted probability of finding it.")]
        [DefaultValue(0.8)]
        public double Power { get; init; } = 0.8;

        [CommandOption("--alpha <NUMBER>")]
        [Description("Level of the test.")]
        [DefaultValue(0.05)]
        public double Alpha { get; init; } = 0.05;

        public override ValidationResult Validate() =>
            Ratio is null == Difference is null ? ValidationResult.Error("Name either --ratio or --difference: what must the trial be able to find?")
            : Ratio is { } ratio && (!double.IsFinite(ratio) || ratio <= 0 || ratio.Equals(1)) ? ValidationResult.Error("--ratio must be above 0 and not 1.")
            : Difference is { } difference && (!double.IsFinite(difference) || difference.Equals(0)) ? ValidationResult.Error("--difference must not be 0.")
            : Treatments is < 2 or > 200 ? ValidationResult.Error($"--treatments is {Treatments}; expected 2 to 200.")
            : Power is > 0 and < 1 && Alpha is > 0 and < 1 ? ValidationResult.Success()
            : ValidationResult.Error("--power and --alpha must be above 0 and below 1.");
    }
}
