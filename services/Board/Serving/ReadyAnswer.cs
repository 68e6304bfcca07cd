using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace LabPipeline.Board.Serving;

/// <summary>The answer of /health/ready: one word for machines that look at nothing else, and each check with its numbers. No names of people, no paths.</summary>
internal static class ReadyAnswer
{
    public static Task WriteAsync(HttpContext context, HealthReport report) => context.Response.WriteAsJsonAsync(
        new
        {
            status = report.Status.ToString(),
            checks = report.Entries.ToDictionary(
                entry => entry.Key,
                entry => new { status = entry.Value.Status.ToString(), description = entry.Value.Exception is null ? entry.Value.Description : "The check itself failed; the board's log says why.", data = entry.Value.Data }),
        },
        context.RequestAborted);
}
