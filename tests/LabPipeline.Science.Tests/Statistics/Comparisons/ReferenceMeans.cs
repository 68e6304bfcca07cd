using LabPipeline.Science.Statistics.Comparisons;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.Comparisons;

/// <summary>Means and the right error term of each data set in the check files.</summary>
internal static class ReferenceMeans
{
    /// <summary>The names used by G_pairwise.csv and G_compact_letters.csv.</summary>
    internal static readonly IReadOnlyList<string> Datasets =
        ["gomez_seedrate", "yates_oats:V", "yates_oats:N", "PlantGrowth", "InsectSprays_raw", "InsectSprays_sqrt", "grover_rcbd_subsample"];

    internal static ComparedMeans Load(string dataset)
    {
        var parts = dataset.Split(':');
        var factor = parts.Length > 1 ? parts[1] : "";
        MeanEstimate[] means = [.. ReferenceTable.Load("G_means.csv").Rows
            .Where(row => row.Text("dataset") == parts[0] && (factor.Length == 0 || row.Text("factor") == factor))
            .Select(row => new MeanEstimate(row.Text("level"), row.Number("mean"), row.Count("n")))];
        // Whole plots are judged by B:V and treatments with subsamples by block:trt; the other error terms are the traps of the file.
        var stratum = dataset switch { "yates_oats:V" => "B:V", "yates_oats:N" => "Within", "grover_rcbd_subsample" => "block:trt", _ => "" };
        var error = ReferenceTable.Load("G_anova_tables.csv").Rows.Single(row => row.Text("dataset") == parts[0]
            && row.Text("stratum") == stratum && row.Text("term") == "Residuals" && row.Text("note").Length == 0);
        return ComparedMeans.FromErrorMeanSquare(means, error.Number("mean_sq"), error.Number("df"));
    }
}
