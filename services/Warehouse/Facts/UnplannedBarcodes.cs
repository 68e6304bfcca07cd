namespace LabPipeline.Warehouse.Facts;

/// <summary>Barcodes of a file that are in no plan.</summary>
/// <param name="Count">How many.</param>
/// <param name="First">The first few of them, rising.</param>
public sealed record UnplannedBarcodes(int Count, IReadOnlyList<string> First)
{
    /// <summary>So many are named.</summary>
    public const int MostNamed = 5;

    public static UnplannedBarcodes Of(IEnumerable<string> rising)
    {
        var (count, first) = (0, new List<string>(MostNamed));
        foreach (var barcode in rising)
        {
            if (count++ < MostNamed)
            {
                first.Add(barcode);
            }
        }

        return new UnplannedBarcodes(count, first);
    }
}
