using LabPipeline.Board.Layout;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace LabPipeline.Board.People;

/// <summary>Signing in and out, and one's own password.</summary>
internal static class SignInEndpoints
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/sign-in", SignInAsync).AllowAnonymous();
        routes.MapPost("/sign-out", SignOutAsync);
        routes.MapPost("/password", ChangePasswordAsync);
    }

    private static async Task<RedirectHttpResult> SignInAsync(
        HttpContext context, PeopleDesk desk, [FromForm] string? name, [FromForm] string? password, [FromForm] string? back)
    {
        var result = await desk.SignInAsync(name ?? "", password ?? "", context.RequestAborted);
        if (result.Person is not { } person)
        {
            var said = result.LockedUntil is null ? Said.WrongSignIn : Said.Locked;
            return TypedResults.LocalRedirect(Address.With("/sign-in", ("said", said), ("back", back)));
        }

        await context.SignInAsync(SignInSetUp.PrincipalOf(person));
        return TypedResults.LocalRedirect(Address.IsOwn(back) ? back! : "/");
    }

    private static async Task<RedirectHttpResult> SignOutAsync(HttpContext context, [FromForm] string? back)
    {
        await context.SignOutAsync();
        return TypedResults.LocalRedirect(Address.With("/sign-in", ("said", Said.SignedOut), ("back", back)));
    }

    private static async Task<RedirectHttpResult> ChangePasswordAsync(
        HttpContext context, PeopleDesk desk, [FromForm] string? old, [FromForm] string? password, [FromForm] string? again)
    {
        var name = context.User.Identity!.Name!;
        if (password != again)
        {
            return To(Said.NotTheSame);
        }

        if ((await desk.SignInAsync(name, old ?? "", context.RequestAborted)).Person is null)
        {
            return To(Said.WrongPassword);
        }

        if (await desk.SetPasswordAsync(name, password ?? "", name, context.RequestAborted) is not null)
        {
            return To(Said.WeakPassword);
        }

        await context.SignOutAsync();
        return TypedResults.LocalRedirect(Address.With("/sign-in", ("said", Said.PasswordSet)));
    }

    private static RedirectHttpResult To(string said) => TypedResults.LocalRedirect(Address.With("/password", ("said", said)));
}
