using LabPipeline.Board.Layout;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace LabPipeline.Board.People;

/// <summary>What an administrator does with people.</summary>
internal static class PeopleEndpoints
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        var people = routes.MapGroup("/office/people").RequireAuthorization(RoleNames.Administer);
        people.MapPost("", AddAsync);
        people.MapPost("role", SetRoleAsync);
        people.MapPost("password", SetPasswordAsync);
    }

    private static async Task<RedirectHttpResult> AddAsync(
        HttpContext context, PeopleDesk desk, [FromForm] string? name, [FromForm] string? role, [FromForm] string? password)
    {
        var fault = RoleNames.Find(role) is { } known
            ? await desk.AddAsync(name ?? "", known, password ?? "", context.User.Identity!.Name!, context.RequestAborted)
            : "no role";
        return Back(fault, Said.PersonMade);
    }

    /// <summary>No role means: may not sign in any more.</summary>
    private static async Task<RedirectHttpResult> SetRoleAsync(HttpContext context, PeopleDesk desk, [FromForm] string? name, [FromForm] string? role)
    {
        var known = RoleNames.Find(role);
        var fault = await desk.SetRoleAsync(name ?? "", known ?? Role.Look, closed: known is null, context.User.Identity!.Name!, context.RequestAborted);
        return Back(fault, Said.PersonChanged);
    }

    private static async Task<RedirectHttpResult> SetPasswordAsync(HttpContext context, PeopleDesk desk, [FromForm] string? name, [FromForm] string? password) =>
        Back(await desk.SetPasswordAsync(name ?? "", password ?? "", context.User.Identity!.Name!, context.RequestAborted), Said.PersonChanged);

    private static RedirectHttpResult Back(string? fault, string done) =>
        TypedResults.LocalRedirect(Address.With("/office/people", ("said", fault is null ? done : Said.PersonRefused)));
}
