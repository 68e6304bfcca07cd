using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;

namespace LabPipeline.Board.People;

/// <summary>Who is signed in: a cookie that only this board reads, looked up again with every request.</summary>
internal static class SignInSetUp
{
    public const string SignInPath = "/sign-in";

    private const string StampClaim = "stamp";

    private static readonly TimeSpan WorkingDay = TimeSpan.FromHours(12);

    public static void Add(IServiceCollection services)
    {
        services.AddSingleton<PeopleDesk>();
        services.AddAuthentication(CookieAuthenticationDefaults.AuthenticationScheme).AddCookie(Configure);
        services.AddAuthorization(options =>
        {
            options.FallbackPolicy = new AuthorizationPolicyBuilder().RequireAuthenticatedUser().Build();
            foreach (var role in RoleNames.All)
            {
                options.AddPolicy(role, policy => policy.AddAuthenticationSchemes(CookieAuthenticationDefaults.AuthenticationScheme).RequireRole(role));
            }
        });
        services.AddAntiforgery(options =>
        {
            options.Cookie.Name = "board-form";
            options.Cookie.SameSite = SameSiteMode.Strict;
            options.Cookie.HttpOnly = true;
            options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
            options.HeaderName = "X-Board-Form";
        });
    }

    /// <summary>Who <paramref name="person"/> is, as the cookie carries it; a role brings those below it.</summary>
    public static ClaimsPrincipal PrincipalOf(Person person)
    {
        var identity = new ClaimsIdentity(CookieAuthenticationDefaults.AuthenticationScheme);
        identity.AddClaim(new Claim(ClaimTypes.NameIdentifier, person.UserId.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        identity.AddClaim(new Claim(ClaimTypes.Name, person.Name));
        identity.AddClaim(new Claim(StampClaim, person.Stamp));
        identity.AddClaims(RoleNames.All.Take((int)person.Role).Select(role => new Claim(ClaimTypes.Role, role)));
        return new ClaimsPrincipal(identity);
    }

    private static void Configure(CookieAuthenticationOptions options)
    {
        options.Cookie.Name = "board-person";
        options.Cookie.HttpOnly = true;
        options.Cookie.SameSite = SameSiteMode.Strict;
        options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        options.ExpireTimeSpan = WorkingDay;
        options.SlidingExpiration = true;
        options.LoginPath = SignInPath;
        options.ReturnUrlParameter = "back";
        options.Events.OnValidatePrincipal = LookAgainAsync;
        options.Events.OnRedirectToAccessDenied = context => Answer(context.Response, StatusCodes.Status403Forbidden);
        options.Events.OnRedirectToLogin = context =>
        {
            // A script gets a number it can act on; a person gets the page.
            if (!HttpMethods.IsGet(context.Request.Method) || !context.Request.Headers.Accept.ToString().Contains("html", StringComparison.Ordinal))
            {
                return Answer(context.Response, StatusCodes.Status401Unauthorized);
            }

            context.Response.Redirect(context.RedirectUri);
            return Task.CompletedTask;
        };
    }

    private static Task Answer(HttpResponse response, int status)
    {
        response.StatusCode = status;
        return Task.CompletedTask;
    }

    private static async Task LookAgainAsync(CookieValidatePrincipalContext context)
    {
        var desk = context.HttpContext.RequestServices.GetRequiredService<PeopleDesk>();
        var person = int.TryParse(context.Principal?.FindFirstValue(ClaimTypes.NameIdentifier), out var userId)
            ? await desk.FindAsync(userId, context.HttpContext.RequestAborted)
            : null;
        if (person is null or { Closed: true } || person.Stamp != context.Principal?.FindFirstValue(StampClaim))
        {
            context.RejectPrincipal();
            await context.HttpContext.SignOutAsync();
        }
    }
}
