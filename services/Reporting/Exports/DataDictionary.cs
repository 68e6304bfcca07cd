using System.Text;

namespace LabPipeline.Reporting.Exports;

/// <summary>What the columns of the analysts' views mean, read from docs/data-dictionary.md, which travels inside the program.</summary>
internal sealed class DataDictionary
{
    private const string SampleResult = "v_sample_result";
    private const string PlotPull = "v_plot_pull";

    private readonly Dictionary<(string View, string Column), string> _meanings = [];

    private DataDictionary(string text)
    {
        var view = "";
        foreach (var line in text.Split('\n').Select(line => line.Trim()))
        {
            if (line.StartsWith('#'))
            {
                var heading = line.TrimStart('#').Trim();
                view = heading.StartsWith("v_", StringComparison.Ordinal) ? heading.Split(':')[0] : "";
            }
            else if (view.Length > 0 && line.StartsWith('|') && line.Split('|') is [_, var columns, var meaning, _] && !columns.StartsWith("---", StringComparison.Ordinal))
            {
                foreach (var column in columns.Split(',').Select(column => column.Trim()))
                {
                    _meanings.TryAdd((view, column), meaning.Trim().Replace("`", "", StringComparison.Ordinal));
                }
            }
        }
    }

    /// <summary>The dictionary as this program ships it.</summary>
    public static DataDictionary Shipped { get; } = Read();

    public static DataDictionary Parse(string markdown) => new(markdown);

    /// <returns>The meaning; empty where the dictionary does not tell.</returns>
    public string MeaningOf(string view, string column) =>
        _meanings.TryGetValue((view, column), out var meaning) ? meaning
        : view == PlotPull && _meanings.TryGetValue((SampleResult, column), out var mean) ? mean
        : "";

    private static DataDictionary Read()
    {
        using var stream = typeof(DataDictionary).Assembly.GetManifestResourceStream("data-dictionary.md")!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return new DataDictionary(reader.ReadToEnd());
    }
}
