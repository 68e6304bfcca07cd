namespace LabPipeline.Warehouse.Facts;

/// <summary>Lists arrivals, newest first, files still held in their folders among them.</summary>
public sealed class ArrivalListStore
{
    private static readonly SqlText List = SqlText.Load<ArrivalListStore>("list-arrivals");
    private static readonly SqlText ListPage = SqlText.Load<ArrivalListStore>("list-arrivals-page");
    private static readonly SqlText Count = SqlText.Load<ArrivalListStore>("count-arrivals");
    private static readonly SqlText FindFiles = SqlText.Load<ArrivalListStore>("find-files-by-name");

    /// <param name="session">The session to read through.</param>
    /// <param name="state">Only this state, or null for all.</param>
    public static async Task<IReadOnlyList<ArrivalListing>> ListAsync(WarehouseSession session, string? state) =>
        [.. (await session.QueryAsync<ArrivalListing>(List).ConfigureAwait(false)).Where(row => state is null || row.State == state)];

    /// <summary>A part of the list, for showing it page by page.</summary>
    /// <param name="session">The session to read through.</param>
    /// <param name="state">Only this state, or null for all.</param>
    /// <param name="skip">So many are passed over.</param>
    /// <param name="most">At most so many follow.</param>
    public static Task<IReadOnlyList<ArrivalListing>> ListPageAsync(WarehouseSession session, string? state, int skip, int most) =>
        session.QueryAsync<ArrivalListing>(ListPage, new { state, skip, most });

    /// <summary>How many arrivals are in each state.</summary>
    public static Task<IReadOnlyList<ArrivalCount>> CountAsync(WarehouseSession session) => session.QueryAsync<ArrivalCount>(Count);

    /// <summary>Files whose name is <paramref name="text"/> or whose SHA-256 begins with it.</summary>
    public static Task<IReadOnlyList<SourceFile>> FindFilesAsync(WarehouseSession session, string text) =>
        session.QueryAsync<SourceFile>(FindFiles, new { text, hash = text.ToLowerInvariant() });
}
