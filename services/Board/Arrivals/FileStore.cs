using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Board.Arrivals;

/// <summary>Everything about one file.</summary>
public sealed class FileStore
{
    private static readonly SqlText Find = SqlText.Load<FileStore>("find-file-by-id");
    private static readonly SqlText ListArrivals = SqlText.Load<FileStore>("list-arrivals-of-file");
    private static readonly SqlText ListParked = SqlText.Load<FileStore>("list-parked-of-file");

    public static Task<SourceFile?> FindAsync(WarehouseSession session, int fileId) => session.FirstOrDefaultAsync<SourceFile>(Find, new { fileId });

    public static Task<IReadOnlyList<Arrival>> ListArrivalsAsync(WarehouseSession session, int fileId) => session.QueryAsync<Arrival>(ListArrivals, new { fileId });

    public static Task<IReadOnlyList<ParkedLine>> ListParkedAsync(WarehouseSession session, int fileId) => session.QueryAsync<ParkedLine>(ListParked, new { fileId });
}
