namespace LabPipeline.Warehouse.Machinery;

/// <summary>The trail of everything people and rules changed; rows are only ever added.</summary>
public sealed class ChangeLogStore
{
    private static readonly SqlText Insert = SqlText.Load<ChangeLogStore>("insert-change");
    private static readonly SqlText ListBySubject = SqlText.Load<ChangeLogStore>("list-changes-by-subject");

    public static Task AddAsync(WarehouseSession session, Change change) => session.ExecuteAsync(Insert, change);

    public static Task<IReadOnlyList<Change>> ListAsync(WarehouseSession session, string subject) =>
        session.QueryAsync<Change>(ListBySubject, new { subject });
}
