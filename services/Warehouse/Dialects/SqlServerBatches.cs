namespace LabPipeline.Warehouse.Dialects;

/// <summary>Splits a script at its GO lines, which belong to tools and not to the language.</summary>
internal static class SqlServerBatches
{
    public static IReadOnlyList<string> Of(string script)
    {
        var batches = new List<string>();
        var lines = new List<string>();
        foreach (var line in script.ReplaceLineEndings("\n").Split('\n').Append("go"))
        {
            if (!line.Trim().Equals("go", StringComparison.OrdinalIgnoreCase))
            {
                lines.Add(line);
                continue;
            }

            var batch = string.Join('\n', lines).Trim();
            lines.Clear();
            if (batch.Length > 0)
            {
                batches.Add(batch);
            }
        }

        return batches;
    }
}
