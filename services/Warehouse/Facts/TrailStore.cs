namespace LabPipeline.Warehouse.Facts;

/// <summary>Everything the warehouse knows about one sample, from its barcode back to file and line.</summary>
public sealed class TrailStore
{
    private static readonly SqlText FindSample = SqlText.Load<TrailStore>("find-trail-sample");
    private static readonly SqlText ListReadings = SqlText.Load<TrailStore>("list-trail-readings");
    private static readonly SqlText ListResults = SqlText.Load<TrailStore>("list-trail-results");

    public static Task<TrailSample?> FindSampleAsync(WarehouseSession session, string barcode) =>
        session.FirstOrDefaultAsync<TrailSample>(FindSample, new { barcode });

    public static Task<IReadOnlyList<TrailReading>> ListReadingsAsync(WarehouseSession session, string barcode) =>
        session.QueryAsync<TrailReading>(ListReadings, new { barcode });

    public static Task<IReadOnlyList<TrailResult>> ListResultsAsync(WarehouseSession session, string barcode) =>
        session.QueryAsync<TrailResult>(ListResults, new { barcode });
}
