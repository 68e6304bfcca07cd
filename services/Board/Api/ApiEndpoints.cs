using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Board.Api;

/// <summary>The interface for programs: it reads, and changes nothing.</summary>
internal static class ApiEndpoints
{
    public const string Policy = "api";

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapOpenApi("/api/{documentName}/openapi.json").RequireAuthorization(Policy);
        var api = routes.MapGroup("/api/v1").RequireAuthorization(Policy);
        api.MapGet("results", ([AsParameters] ApiQuery query, LabWarehouse warehouse, CancellationToken token) => AnswerAsync(query, warehouse, ApiStore.ResultsAsync, token))
            .WithSummary("Results of samples with their place in the trial, by barcode and quantity.")
            .Produces<ApiPage<ApiResult>>(contentType: "application/json", additionalContentTypes: "text/csv").ProducesValidationProblem();
        api.MapGet("alerts", ([AsParameters] ApiQuery query, LabWarehouse warehouse, CancellationToken token) => AnswerAsync(query, warehouse, ApiStore.AlertsAsync, token))
            .WithSummary("Quality alerts by their number.")
            .Produces<ApiPage<ApiAlert>>(contentType: "application/json", additionalContentTypes: "text/csv").ProducesValidationProblem();
        api.MapGet("arrivals", ([AsParameters] ApiQuery query, LabWarehouse warehouse, CancellationToken token) => AnswerAsync(query, warehouse, ApiStore.ArrivalsAsync, token))
            .WithSummary("Files that arrived, the newest first.")
            .Produces<ApiPage<ArrivalListing>>(contentType: "application/json", additionalContentTypes: "text/csv").ProducesValidationProblem();
    }

    private static async Task<IResult> AnswerAsync<T>(
        ApiQuery query, LabWarehouse warehouse, Func<WarehouseSession, ApiQuery, Task<ApiPage<T>>> list, CancellationToken cancellationToken)
    {
        var faults = query.Faults();
        if (faults.Count > 0)
        {
            return TypedResults.ValidationProblem(faults);
        }

        var page = await warehouse.ReadAsync(session => list(session, query), cancellationToken);
        return query.Format == "csv" ? TypedResults.Text(ApiCsv.Of(page.Items), "text/csv") : TypedResults.Json(page);
    }
}
