using System.Text.Json;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;

namespace LabPipeline.Board.Api;

/// <summary>What the interface for programs needs.</summary>
internal static class ApiSetUp
{
    private const string Description =
        "Read-only lists of a post-harvest potato storage laboratory. Send a key that an administrator made: 'Authorization: Bearer labkey-…'. "
        + "Instants are UTC (ISO 8601); a result below its limit carries the limit as its value and below_limit = true.";

    public static void Add(IServiceCollection services)
    {
        services.AddSingleton<KeyDesk>();
        services.AddAuthentication().AddScheme<AuthenticationSchemeOptions, KeyAuthentication>(KeyAuthentication.SchemeName, null);
        services.AddAuthorizationBuilder().AddPolicy(ApiEndpoints.Policy, policy =>
            policy.AddAuthenticationSchemes(KeyAuthentication.SchemeName, CookieAuthenticationDefaults.AuthenticationScheme).RequireAuthenticatedUser());
        services.ConfigureHttpJsonOptions(json => json.SerializerOptions.PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower);
        services.AddOpenApi("v1", options =>
        {
            options.ShouldInclude = endpoint => endpoint.RelativePath?.StartsWith("api/", StringComparison.Ordinal) == true;
            options.AddDocumentTransformer((document, _, _) =>
            {
                document.Info.Title = "LabPipeline board";
                document.Info.Version = "v1";
                document.Info.Description = Description;
                return Task.CompletedTask;
            });
        });
    }
}
