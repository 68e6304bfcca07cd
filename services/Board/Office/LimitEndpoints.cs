using LabPipeline.Board.Layout;
using LabPipeline.Board.People;
using LabPipeline.Quality.Evaluation;
using LabPipeline.Science.Quantities;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace LabPipeline.Board.Office;

/// <summary>What an administrator can decide about limits.</summary>
internal static class LimitEndpoints
{
    private const string Page = "/office/limits";

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost(Page + "/threshold", ThresholdAsync).RequireAuthorization(RoleNames.Administer);
        routes.MapPost(Page + "/target", TargetAsync).RequireAuthorization(RoleNames.Administer);
        routes.MapPost(Page + "/freeze", FreezeAsync).RequireAuthorization(RoleNames.Administer);
    }

    private static async Task<RedirectHttpResult> ThresholdAsync(
        HttpContext context, LimitDesk desk, [FromForm] string trial, [FromForm] string quantity, [FromForm] string kind, [FromForm] string? value, [FromForm] string? from, [FromForm] string? why) =>
        Back(await desk.SetThresholdAsync(trial, quantity, kind, value, Decision(context, why, from), context.RequestAborted));

    private static async Task<RedirectHttpResult> TargetAsync(
        HttpContext context, LimitDesk desk, [FromForm] string instrument, [FromForm] string material, [FromForm] string quantity,
        [FromForm] string? target, [FromForm] string? tolerance, [FromForm] string? from, [FromForm] string? why) =>
        Back(QuantityCatalogue.Find(quantity) is { } known
            ? await desk.StateTargetAsync(Chart(instrument, material, known), target, tolerance, Decision(context, why, from), context.RequestAborted)
            : Said.LimitNotKnown);

    private static async Task<RedirectHttpResult> FreezeAsync(
        HttpContext context, LimitDesk desk, [FromForm] string chart, [FromForm] string? from, [FromForm] string? why) =>
        Back(await desk.FreezeAsync(chart, Decision(context, why, from), context.RequestAborted));

    private static ControlChartName Chart(string instrument, string material, Quantity quantity) => new() { Instrument = instrument, Material = material, QuantityId = quantity.Id };

    private static LimitDecision Decision(HttpContext context, string? why, string? from) => new(context.User.Identity!.Name!, why, from);

    private static RedirectHttpResult Back(string said) => TypedResults.LocalRedirect(Address.With(Page, ("said", said)));
}
