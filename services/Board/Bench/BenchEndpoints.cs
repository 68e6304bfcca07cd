using LabPipeline.Board.People;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.HttpResults;

namespace LabPipeline.Board.Bench;

/// <summary>Where tablets send finished bench sheets. Sending one again is harmless.</summary>
internal static class BenchEndpoints
{
    private const long LargestEntry = 1024 * 1024;

    public static void Map(IEndpointRouteBuilder routes)
    {
        var bench = routes.MapGroup("/bench").RequireAuthorization(RoleNames.Bench);
        bench.MapGet("token", (HttpContext context, IAntiforgery forms) => forms.GetAndStoreTokens(context).RequestToken);
        bench.MapPost("entries", TakeAsync).WithMetadata(new Microsoft.AspNetCore.Mvc.RequestSizeLimitAttribute(LargestEntry));
    }

    private static async Task<Results<Ok<BenchReceipt>, UnprocessableEntity<BenchReceipt>, Conflict<BenchReceipt>, BadRequest>> TakeAsync(
        BenchEntry entry, HttpContext context, IAntiforgery forms, BenchDesk desk)
    {
        if (!await forms.IsRequestValidAsync(context))
        {
            return TypedResults.BadRequest();
        }

        if (entry.By != context.User.Identity!.Name)
        {
            return TypedResults.Conflict(BenchReceipt.Refused($"The sheet was written by {entry.By}, who must be signed in to send it."));
        }

        var receipt = await desk.TakeAsync(entry, context.RequestAborted);
        return receipt.File is null ? TypedResults.UnprocessableEntity(receipt) : TypedResults.Ok(receipt);
    }
}
