using System.ComponentModel;
using System.Globalization;
using LabPipeline.Quality.Evaluation;
using LabPipeline.Quality.Results;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Results;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>The laboratory's own repeatability from its duplicates, beside the one in use.</summary>
internal sealed class SpreadCommand(IAnsiConsole console) : AsyncCommand<SpreadCommand.Settings>
{
    private static readonly Quantity[] Judged = [QuantityCatalogue.Glucose, QuantityCatalogue.Sucrose];

    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var kept = await warehouse.ReadAsync(RepeatabilityStore.ListAsync, cancellationToken);
        var table = new Table().AddColumns("quantity", "", "pairs", "s_r at low level", "s_r as share of level", "from");
        foreach (var quantity in Judged)
        {
            ShowInUse(table, quantity, kept);
            if (await EstimateAsync(warehouse, quantity, cancellationToken) is { } own)
            {
                table.AddRow(Row("", "from the warehouse", own.Pairs, own.Model.Constant, own.Model.Relative, own.Model.Source + (own.Model.IsProvisional ? " (too few: provisional)" : "")));
                await KeepAsync(warehouse, settings, own, cancellationToken);
            }
        }

        console.Write(table);
        console.MarkupLineInterpolated($"Units: mg/g fresh weight. Limit r = 2.8 s_r. {(settings.Keep ? "The values from the warehouse are in use from now on." : "--keep puts the values from the warehouse in use.")}");
        return ExitCode.Done;
    }

    private static async Task<(RepeatabilityModel Model, int Pairs)?> EstimateAsync(LabWarehouse warehouse, Quantity quantity, CancellationToken cancellationToken)
    {
        var pairs = await warehouse.ReadAsync(session => DuplicatePairStore.ListAsync(session, quantity), cancellationToken);
        return pairs.Count < RepeatabilityReview.FewestPairs ? null : (RepeatabilityReview.Estimate(quantity, pairs), pairs.Count);
    }

    private static void ShowInUse(Table table, Quantity quantity, IReadOnlyList<RepeatabilityRow> kept)
    {
        if (kept.FirstOrDefault(row => row.QuantityId == quantity.Id) is { } row)
        {
            table.AddRow(Row(quantity.Name, string.Create(CultureInfo.InvariantCulture, $"in use, version {row.Version}"), row.Pairs, row.Constant, row.Relative, row.Source));
        }
        else if (ProvisionalRepeatability.Find(quantity) is { } provisional)
        {
            table.AddRow(Row(quantity.Name, "in use, provisional", null, provisional.Constant, provisional.Relative, provisional.Source));
        }
    }

    private static async Task KeepAsync(
        LabWarehouse warehouse, Settings settings, (RepeatabilityModel Model, int Pairs) own, CancellationToken cancellationToken)
    {
        if (settings.Keep)
        {
            await warehouse.WriteAsync(
                session => RepeatabilityStore.KeepAsync(session, new RepeatabilityRow
                {
                    QuantityId = own.Model.Quantity.Id,
                    Constant = own.Model.Constant,
                    Relative = own.Model.Relative,
                    Pairs = own.Pairs,
                    Provisional = own.Model.IsProvisional,
                    Source = own.Model.Source,
                    KeptAt = TimeProvider.System.GetUtcNow(),
                    KeptBy = settings.By,
                }),
                cancellationToken);
        }
    }

    private static string[] Row(string quantity, string which, int? pairs, decimal constant, decimal relative, string source) =>
    [
        .. new[]
        {
            quantity,
            which,
            pairs?.ToString(CultureInfo.InvariantCulture) ?? "",
            constant.ToString("0.#####", CultureInfo.InvariantCulture),
            relative.ToString("0.0 %", CultureInfo.InvariantCulture),
            source,
        }.Select(Markup.Escape),
    ];

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : StationSettings
    {
        [CommandOption("--keep")]
        [Description("Put the values from the warehouse in use; results are judged by them from the next change on.")]
        public bool Keep { get; init; }

        [CommandOption("--by <NAME>")]
        [Description("Your name, for the change log; needed with --keep.")]
        public string By { get; init; } = "";

        public override ValidationResult Validate() =>
            Keep && string.IsNullOrWhiteSpace(By) ? ValidationResult.Error("--by is missing: who keeps these values?") : ValidationResult.Success();
    }
}
