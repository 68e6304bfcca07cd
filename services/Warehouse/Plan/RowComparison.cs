namespace LabPipeline.Warehouse.Plan;

/// <summary>What became of the rows of one table between the stored plan and the offered one.</summary>
internal sealed record RowComparison<TRow>(
    IReadOnlyList<TRow> Added, IReadOnlyList<(TRow Stored, TRow Offered)> Changed, IReadOnlyList<TRow> Removed)
{
    public static RowComparison<TRow> Of<TKey>(IReadOnlyList<TRow> stored, IReadOnlyList<TRow> offered, Func<TRow, TKey> key)
        where TKey : notnull
    {
        var before = stored.ToDictionary(key);
        var after = offered.Select(key).ToHashSet();
        return new RowComparison<TRow>(
            [.. offered.Where(row => !before.ContainsKey(key(row)))],
            [
                .. offered.Where(row => before.TryGetValue(key(row), out var old) && !EqualityComparer<TRow>.Default.Equals(old, row))
                    .Select(row => (before[key(row)], row)),
            ],
            [.. stored.Where(row => !after.Contains(key(row)))]);
    }
}
