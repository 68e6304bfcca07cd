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
}
