using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse;

namespace LabPipeline.Board.Season;

/// <summary>Results of a trial over its pulls.</summary>
public sealed class SeasonStore
{
    private static readonly SqlText ListPoints = SqlText.Load<SeasonStore>("list-season-points");
    private static readonly SqlText ListGrid = SqlText.Load<SeasonStore>("list-season-grid");
    private static readonly SqlText ListQuantities = SqlText.Load<SeasonStore>("list-season-quantities");

    public static Task<IReadOnlyList<SeasonPoint>> ListAsync(WarehouseSession session, string trialCode, Quantity quantity) =>
        session.QueryAsync<SeasonPoint>(ListPoints, new { trialCode, quantityId = quantity.Id });

    /// <summary>Where every expected quantity of every plot and pull stands.</summary>
    public static Task<IReadOnlyList<GridRow>> ListGridAsync(WarehouseSession session, string trialCode) =>
        session.QueryAsync<GridRow>(ListGrid, new { trialCode });

    /// <summary>Quantities the trial has results of.</summary>
    public static async Task<IReadOnlyList<Quantity>> ListQuantitiesAsync(WarehouseSession session, string trialCode)
    {
        var ids = await session.QueryAsync<int>(ListQuantities, new { trialCode }).ConfigureAwait(false);
        return [.. QuantityCatalogue.All.Where(quantity => ids.Contains(quantity.Id))];
    }
}
