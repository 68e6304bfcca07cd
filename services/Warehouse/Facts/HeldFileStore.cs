namespace LabPipeline.Warehouse.Facts;

/// <summary>Files that wait in drop folders; a row goes away when its file is taken or leaves.</summary>
public sealed class HeldFileStore
{
    private static readonly SqlText List = SqlText.Load<HeldFileStore>("list-held-files");
    private static readonly SqlText Update = SqlText.Load<HeldFileStore>("update-held-file");
    private static readonly SqlText Insert = SqlText.Load<HeldFileStore>("insert-held-file");
    private static readonly SqlText Delete = SqlText.Load<HeldFileStore>("delete-held-file");

    public static Task<IReadOnlyList<HeldFile>> ListAsync(WarehouseSession session) => session.QueryAsync<HeldFile>(List);

    public static async Task PutAsync(WarehouseSession session, HeldFile held)
    {
        if (await session.ExecuteAsync(Update, held).ConfigureAwait(false) == 0)
        {
            await session.ExecuteAsync(Insert, held).ConfigureAwait(false);
        }
    }

    public static Task RemoveAsync(WarehouseSession session, string folder, IReadOnlyCollection<string> names) =>
        session.ExecuteAsync(Delete, new { folder, names });
}
