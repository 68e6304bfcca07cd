using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Quality.Rules;

/// <summary>A file names samples that pass the check character but stand in no trial plan; their readings wait.</summary>
public sealed class UnknownBarcodeRule : IRule<FileEvidence>
{
    public string Name => "unknown barcode";

    public IEnumerable<Finding> Evaluate(FileEvidence evidence)
    {
        if (evidence.State != FileState.Waiting || evidence.UnknownBarcodes.Count == 0)
        {
            yield break;
        }

        var barcodes = evidence.UnknownBarcodes.Order(StringComparer.Ordinal).ToList();
        yield return Findings.Of(
            this, evidence, FindingLevel.Hold, "barcodes",
            $"{evidence.Title} holds {NumberText.Of(barcodes.Count)} {(barcodes.Count == 1 ? "barcode that is" : "barcodes that are")} in no trial plan: "
                + $"{NumberText.List(barcodes)}; their readings wait.",
            "Load the plan that holds them and they join by themselves; if it was loaded, a label of another season was scanned: take the readings out and scan again.",
            new FactSheet().Add("file", evidence.Name).Add("barcodes", NumberText.List(barcodes, 200)));
    }
}
