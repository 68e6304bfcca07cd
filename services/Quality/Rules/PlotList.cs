namespace LabPipeline.Quality.Rules;

/// <summary>Plots as the storage manager walks to them: by bay.</summary>
internal static class PlotList
{
    private const int MostPlots = 12;

    public static string ByBay(IEnumerable<PullSample> samples) => string.Join(
        "; ",
        samples.GroupBy(sample => sample.BayCode, StringComparer.Ordinal)
            .OrderBy(bay => bay.Key, StringComparer.Ordinal)
            .Select(bay => $"bay {bay.Key}: {NumberText.List([.. bay.Select(sample => sample.PlotCode).Order(StringComparer.Ordinal)], MostPlots)}"));

    /// <summary>"pull 4, block 2, block 3": where the analysis will miss them.</summary>
    public static string ByBlock(PullEvidence pull, IEnumerable<PullSample> samples) => string.Join(
        ", ",
        samples.Select(sample => sample.Block).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
            .Select(block => "block " + block).Prepend(NumberText.Invariant($"pull {pull.Number}")));
}
