using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Board.Api;

/// <summary>Lists of the interface for programs, part by part.</summary>
public sealed class ApiStore
{
    private static readonly SqlText ListResults = SqlText.Load<ApiStore>("list-api-results");
    private static readonly SqlText CountResults = SqlText.Load<ApiStore>("count-api-results");
    private static readonly SqlText ListAlerts = SqlText.Load<ApiStore>("list-api-alerts");
    private static readonly SqlText CountAlerts = SqlText.Load<ApiStore>("count-api-alerts");

    public static async Task<ApiPage<ApiResult>> ResultsAsync(WarehouseSession session, ApiQuery query) => new(
        await session.QueryAsync<ApiResult>(ListResults, Parameters(query)).ConfigureAwait(false),
        query.Part,
        query.Most,
        await session.ScalarAsync<int>(CountResults, Parameters(query)).ConfigureAwait(false));

    public static async Task<ApiPage<ApiAlert>> AlertsAsync(WarehouseSession session, ApiQuery query) => new(
        await session.QueryAsync<ApiAlert>(ListAlerts, Parameters(query)).ConfigureAwait(false),
        query.Part,
        query.Most,
        await session.ScalarAsync<int>(CountAlerts, Parameters(query)).ConfigureAwait(false));

    public static async Task<ApiPage<ArrivalListing>> ArrivalsAsync(WarehouseSession session, ApiQuery query)
    {
        var counts = await ArrivalListStore.CountAsync(session).ConfigureAwait(false);
        var items = await ArrivalListStore.ListPageAsync(session, query.State, query.Skip, query.Most).ConfigureAwait(false);
        return new ApiPage<ArrivalListing>(items, query.Part, query.Most, counts.Where(count => query.State is null || count.State == query.State).Sum(count => count.Arrivals));
    }

    private static object Parameters(ApiQuery query) =>
        new { query.Trial, query.Pull, query.Quantity, query.State, query.Level, query.Skip, Size = query.Most };
}
