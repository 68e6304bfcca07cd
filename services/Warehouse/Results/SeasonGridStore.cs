namespace LabPipeline.Warehouse.Results;

/// <summary>The season grid: what the plan expects of every plot at every pull, and what became of it.</summary>
public sealed class SeasonGridStore
{
    private static readonly SqlText List = SqlText.Load<SeasonGridStore>("list-season-grid");
    private static readonly SqlText ListStates = SqlText.Load<SeasonGridStore>("list-measurement-states");
    private static readonly SqlText Insert = SqlText.Load<SeasonGridStore>("insert-measurement-state");
    private static readonly SqlText Update = SqlText.Load<SeasonGridStore>("update-measurement-state");
    private static readonly SqlText Delete = SqlText.Load<SeasonGridStore>("delete-measurement-state");

    /// <summary>The cells of a trial by pull, plot and quantity.</summary>
    public static Task<IReadOnlyList<SeasonGridCell>> ListAsync(WarehouseSession session, string trialCode) =>
        session.QueryAsync<SeasonGridCell>(List, new { trialCode });

    /// <summary>Makes <paramref name="states"/> those of a pull; rows that say the same stay untouched.</summary>
    public static async Task ReplaceAsync(WarehouseSession session, string trialCode, int pullNo, IReadOnlyCollection<MeasurementState> states)
    {
        var stored = (await session.QueryAsync<MeasurementState>(ListStates, new { trialCode, pullNo }).ConfigureAwait(false))
            .ToDictionary(state => (state.Barcode, state.QuantityId));
        foreach (var state in states)
        {
            if (!stored.Remove((state.Barcode, state.QuantityId), out var before))
            {
                await session.ExecuteAsync(Insert, state).ConfigureAwait(false);
            }
            else if (state != before)
            {
                await session.ExecuteAsync(Update, state).ConfigureAwait(false);
            }
        }

        foreach (var gone in stored.Values)
        {
            await session.ExecuteAsync(Delete, gone).ConfigureAwait(false);
        }
    }
}
