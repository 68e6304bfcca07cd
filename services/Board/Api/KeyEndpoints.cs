using LabPipeline.Board.Layout;
using LabPipeline.Board.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace LabPipeline.Board.Api;

/// <summary>Ending a program's key.</summary>
internal static class KeyEndpoints
{
    public static void Map(IEndpointRouteBuilder routes) => routes.MapPost("/office/keys/end", EndAsync).RequireAuthorization(RoleNames.Administer);

    private static async Task<RedirectHttpResult> EndAsync(HttpContext context, KeyDesk keys, [FromForm] string? name)
    {
        var ended = await keys.EndAsync(name ?? "", context.User.Identity!.Name!, context.RequestAborted);
        return TypedResults.LocalRedirect(Address.With("/office/keys", ("said", ended ? Said.KeyEnded : Said.KeyRefused)));
    }
}
