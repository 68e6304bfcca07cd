namespace LabPipeline.Warehouse.Facts;

/// <summary>Barcodes with readings, new or contested, that came with one file.</summary>
/// <param name="Count">How many.</param>
/// <param name="Rising">Each once, in order; read from the database as it is asked for where they are too many for memory, so only inside the session.</param>
public sealed record FileBarcodes(int Count, IEnumerable<string> Rising)
{
    public static readonly FileBarcodes None = new(0, []);
}
