using System.Globalization;
using LabPipeline.Reporting.Exports;
using LabPipeline.Reporting.Printing;

namespace LabPipeline.Reporting.Bench;

/// <summary>Which bags to bring for a pull, by bay and plot.</summary>
public static class PickList
{
    private static readonly TableColumn[] Columns =
    [
        new("", 0.06), new("bay", 0.1, Bold: true), new("plot", 0.13, Bold: true), new("block", 0.1), new("barcode", 0.26, Bold: true), new("mass (g)", 0.15), new("remarks", 0.2),
    ];

    /// <summary>By bay, then by plot, numbers in their order.</summary>
    public static IReadOnlyList<PullSample> Of(BenchPull pull)
    {
        ArgumentNullException.ThrowIfNull(pull);
        return
        [
            .. pull.Samples.OrderBy(sample => sample.BayCode, StringComparer.OrdinalIgnoreCase)
                .ThenBy(sample => sample.PlotCode.Length)
                .ThenBy(sample => sample.PlotCode, StringComparer.Ordinal),
        ];
    }

    public static string ToCsv(BenchPull pull)
    {
        var lines = Of(pull).Select(sample => string.Join(',', new[]
        {
            pull.TrialCode, pull.PullNo.ToString(CultureInfo.InvariantCulture), sample.BayCode, sample.PlotCode, sample.Block, sample.Barcode,
        }.Select(CsvCell.Of)));
        return string.Join('\n', lines.Prepend("trial,pull,bay,plot,block,barcode")) + "\n";
    }

    /// <param name="pull">The pull with its samples.</param>
    /// <param name="warnings">What is not as it should be, a line each.</param>
    /// <param name="now">When the file is made.</param>
    /// <exception cref="PrintException">There is no font, or a text does not fit its cell.</exception>
    public static byte[] Pdf(BenchPull pull, IReadOnlyList<string> warnings, DateTimeOffset now) =>
        PdfPages.Of(Pages(pull, warnings), $"pick list {pull.TrialCode} pull {pull.PullNo}", now);

    internal static IReadOnlyList<Page> Pages(BenchPull pull, IReadOnlyList<string> warnings)
    {
        var bays = Of(pull).GroupBy(sample => sample.BayCode).Select(bay => (
            $"Bay {bay.Key}: {bay.Count()} bags",
            (IReadOnlyList<IReadOnlyList<string>>)[.. bay.Select(sample => (IReadOnlyList<string>)["", sample.BayCode, sample.PlotCode, sample.Block, sample.Barcode, "", ""])]));
        return new TablePages(
            new TableSheet(
                Text($"Pick list: {pull.TrialCode}, pull {pull.PullNo}"),
                [
                    Text($"Due {pull.DueOn:yyyy-MM-dd}, day {pull.DaysAfterHarvest} after harvest; window {pull.OpensOn:yyyy-MM-dd} to {pull.ClosesOn:yyyy-MM-dd}. {pull.Samples.Count} bags of {pull.TubersPerSample} tubers."),
                    "Scan or compare every barcode with the bag's tag; tick what was brought, write down what was not found and why.",
                    .. warnings.Select(warning => "! " + warning),
                ],
                Columns,
                [.. bays],
                Cautions.Storage),
            new TextWidths()).Pages();
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
