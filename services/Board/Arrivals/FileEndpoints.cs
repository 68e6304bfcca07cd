using LabPipeline.Board.Layout;
using LabPipeline.Board.People;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Facts;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace LabPipeline.Board.Arrivals;

/// <summary>What a person can do to a file that arrived.</summary>
internal static class FileEndpoints
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/arrival/{fileId:int}/take-out", TakeOutAsync).RequireAuthorization(RoleNames.Manage);
        routes.MapPost("/arrival/{fileId:int}/accept", AcceptAsync).RequireAuthorization(RoleNames.Manage);
    }

    private static async Task<RedirectHttpResult> TakeOutAsync(
        int fileId, HttpContext context, LabWarehouse warehouse, TimeProvider time, [FromForm] string? why)
    {
        if (string.IsNullOrWhiteSpace(why))
        {
            return Back(fileId, Said.ReasonMissing);
        }

        var taken = await warehouse.WriteAsync(
            async session =>
            {
                if (await FileStore.FindAsync(session, fileId) is not { State: FileState.Stored or FileState.Waiting } file)
                {
                    return false;
                }

                await FileCorrections.TakeOutAsync(session, file, context.User.Identity!.Name!, why.Trim(), time.GetUtcNow());
                return true;
            },
            context.RequestAborted);
        return Back(fileId, taken ? Said.TakenOut : Said.NotTakenOut);
    }

    private static async Task<RedirectHttpResult> AcceptAsync(
        int fileId, HttpContext context, LabWarehouse warehouse, TimeProvider time, IFormCollection form)
    {
        var why = form["why"].ToString();
        string[] chosen = [.. form["chosen"].OfType<string>()];
        if (string.IsNullOrWhiteSpace(why))
        {
            return Back(fileId, Said.ReasonMissing);
        }

        var accepted = await warehouse.WriteAsync(
            async session => await FileStore.FindAsync(session, fileId) is { } file
                ? await FileCorrections.AcceptChosenAsync(session, file, chosen, context.User.Identity!.Name!, why.Trim(), time.GetUtcNow())
                : 0,
            context.RequestAborted);
        return Back(fileId, accepted > 0 ? Said.Accepted : Said.NothingAccepted);
    }

    private static RedirectHttpResult Back(int fileId, string said) =>
        TypedResults.LocalRedirect(Address.With(Address.OfFile(fileId), ("said", said)));
}
