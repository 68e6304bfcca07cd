using LabPipeline.Board.Serving;
using LabPipeline.Reporting.Labels;
using LabPipeline.Warehouse;

namespace LabPipeline.Board.Papers;

/// <summary>Labels as a file, for printers that scale web pages.</summary>
internal static class PaperEndpoints
{
    public const string Pdf = "/papers/labels.pdf";

    private const string MediaType = "application/pdf";

    public static void Map(IEndpointRouteBuilder routes) => routes.MapGet(Pdf, PdfAsync);

    private static async Task<IResult> PdfAsync(
        string? trial, int? pull, string? bay, string? paper, int? first, LabWarehouse warehouse, LabClock clock, TimeProvider time, CancellationToken cancellationToken)
    {
        var found = await warehouse.ReadAsync(
            async session => await PaperDesk.FindAsync(session, new PaperOrder(trial, pull, bay, paper, first), clock) is { IsLabels: true } choice
                ? (Choice: choice, Labels: await PaperDesk.LabelsAsync(session, choice))
                : ((PaperChoice Choice, (LabelSheet Sheet, IReadOnlyList<LabelText> Labels) Labels)?)null,
            cancellationToken);
        if (found is not { } order)
        {
            return TypedResults.NotFound();
        }

        var (pdf, _) = LabelPrint.Pdf(order.Labels.Sheet, order.Labels.Labels, order.Choice.First, time.GetUtcNow());
        return pdf is null ? TypedResults.NotFound() : TypedResults.File(pdf, MediaType, $"labels-{order.Choice.Pull.TrialCode}-{order.Choice.Pull.PullNo}.pdf");
    }
}
