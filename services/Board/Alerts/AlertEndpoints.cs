using LabPipeline.Board.Layout;
using LabPipeline.Board.People;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Alerts;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace LabPipeline.Board.Alerts;

/// <summary>What a person can do about an alert.</summary>
internal static class AlertEndpoints
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/alert/{number:int}/seen", SeenAsync).RequireAuthorization(RoleNames.Bench);
        routes.MapPost("/alert/{number:int}/settle", SettleAsync).RequireAuthorization(RoleNames.Manage);
    }

    // The form parameter makes the endpoint ask for the form's token.
    private static async Task<RedirectHttpResult> SeenAsync(
        int number, HttpContext context, LabWarehouse warehouse, TimeProvider time, [FromForm] string? why)
    {
        _ = why;
        var who = context.User.Identity!.Name!;
        var outcome = await warehouse.WriteAsync(session => AlertStore.AcknowledgeAsync(session, number, who, time.GetUtcNow()), context.RequestAborted);
        return Back(number, outcome, Said.Seen);
    }

    private static async Task<RedirectHttpResult> SettleAsync(
        int number, HttpContext context, LabWarehouse warehouse, TimeProvider time, [FromForm] string? why)
    {
        if (string.IsNullOrWhiteSpace(why))
        {
            return TypedResults.LocalRedirect(Address.With(Address.OfAlert(number), ("said", Said.ReasonMissing)));
        }

        var who = context.User.Identity!.Name!;
        var outcome = await warehouse.WriteAsync(
            session => AlertStore.SettleAsync(session, number, who, why.Trim(), time.GetUtcNow()), context.RequestAborted);
        return Back(number, outcome, Said.Settled);
    }

    private static RedirectHttpResult Back(int number, AlertAction outcome, string done) =>
        TypedResults.LocalRedirect(Address.With(Address.OfAlert(number), ("said", outcome == AlertAction.Done ? done : Said.NotOpen)));
}
