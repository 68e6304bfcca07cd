using System.Globalization;
using LabPipeline.Reporting.Exports;
using LabPipeline.Reporting.Printing;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Bench;

/// <summary>A drawn order on paper, block by block, with the places of control checks.</summary>
public static class BenchSheet
{
    private static readonly TableColumn[] Columns =
    [
        new("", 0.06), new("place", 0.1, Bold: true), new("barcode", 0.28, Bold: true), new("plot", 0.14), new("remarks", 0.42),
    ];

    public static string ToCsv(BenchOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        var lines = order.Places.Select(place => string.Join(',', new[]
        {
            order.TrialCode, Whole(order.PullNo), order.Kind, Whole(place.Position), place.Block, place.PlotCode, place.Barcode, Whole(order.DrawNo), Whole(order.Seed),
        }.Select(CsvCell.Of)));
        return string.Join('\n', lines.Prepend("trial,pull,kind,place,block,plot,barcode,draw,seed")) + "\n";
    }

    /// <param name="order">The order in effect.</param>
    /// <param name="controlEvery">Samples between control checks, 1 or more.</param>
    /// <param name="now">When the file is made.</param>
    /// <exception cref="PrintException">There is no font, or a text does not fit its cell.</exception>
    public static byte[] Pdf(BenchOrder order, int controlEvery, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(order);
        return PdfPages.Of(Pages(order, controlEvery), $"{order.Kind} order {order.TrialCode} pull {order.PullNo}", now);
    }

    internal static IReadOnlyList<Page> Pages(BenchOrder order, int controlEvery)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(controlEvery, 1);
        var isFrying = order.Kind == BenchOrderKinds.Frying;
        return new TablePages(
            new TableSheet(
                Text($"{(isFrying ? "Frying" : "Analysis")} order: {order.TrialCode}, pull {order.PullNo}"),
                [
                    Text($"Drawn at random within blocks: draw {order.DrawNo}, seed {order.Seed}, by {order.MadeBy}, {order.MadeAt:yyyy-MM-dd HH:mm} UTC ({order.Why})."),
                    "Work strictly in this order. Scan each barcode at its place; when a place must be left empty or changed, write down why.",
                ],
                Columns,
                [.. order.Places.GroupBy(place => place.Block).Select(block => (Text($"Block {block.Key}: {block.Count()} samples"), (IReadOnlyList<IReadOnlyList<string>>)RowsOf([.. block], controlEvery, isFrying)))],
                isFrying ? Cautions.Frying : Cautions.Analysis),
            new TextWidths()).Pages();
    }

    private static List<IReadOnlyList<string>> RowsOf(IReadOnlyList<BenchPlace> places, int controlEvery, bool isFrying)
    {
        var control = isFrying ? "control potatoes; oil temperature before ______ lowest ______ after ______ °C" : "control check; result ____________ lot ____________";
        var opening = isFrying ? control : "blank, standards, then " + control;
        var rows = new List<IReadOnlyList<string>> { new[] { opening } };
        foreach (var part in places.Chunk(controlEvery))
        {
            rows.AddRange(part.Select(place => (IReadOnlyList<string>)["", Whole(place.Position), place.Barcode, place.PlotCode, ""]));
            rows.Add([control]);
        }

        if (!isFrying)
        {
            rows[^1] = ["closing standard, then " + control];
        }

        return rows;
    }

    private static string Whole(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
