using LabPipeline.Board.Layout;
using LabPipeline.Board.People;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Channels;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace LabPipeline.Board.Office;

/// <summary>Asks the notifier, wherever it runs, to send a test on a channel.</summary>
internal static class ChannelEndpoints
{
    private const string Page = "/office/channels";

    public static void Map(IEndpointRouteBuilder routes) => routes.MapPost(Page + "/test", TestAsync).RequireAuthorization(RoleNames.Administer);

    private static async Task<RedirectHttpResult> TestAsync(HttpContext context, LabWarehouse warehouse, TimeProvider time, [FromForm] string channel)
    {
        var who = context.User.Identity!.Name!;
        var asked = await warehouse.WriteAsync(
            async session =>
            {
                var isKnown = (await NoticeChannelStore.ListAsync(session)).Any(known => known.Name == channel);
                if (isKnown)
                {
                    await ChannelTestStore.AskAsync(session, channel, who, time.GetUtcNow());
                }

                return isKnown;
            },
            context.RequestAborted);
        return TypedResults.LocalRedirect(Address.With(Page, ("said", asked ? Said.TestAsked : Said.NoSuchChannel)));
    }
}
