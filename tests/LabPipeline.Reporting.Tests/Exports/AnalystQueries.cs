using System.Runtime.CompilerServices;

namespace LabPipeline.Reporting.Tests.Exports;

/// <summary>The worked queries as their page prints them.</summary>
internal static class AnalystQueries
{
    public static IReadOnlyList<string> Read([CallerFilePath] string here = "")
    {
        var page = File.ReadAllText(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "docs", "specs", "analyst-queries.md"));
        return [.. page.Split("```sql").Skip(1).Select(part => part.Split("```")[0].Trim())];
    }
}
