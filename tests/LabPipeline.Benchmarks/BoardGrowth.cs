namespace LabPipeline.Benchmarks;

/// <summary>What a page of the board costs one person, by how many readings the warehouse holds. Trials and samples are as many each time.</summary>
internal static class BoardGrowth
{
    private const int WarmingTimes = 40;
    private const int Times = 40;

    private static readonly int[] Sizes = [10_000, 1_000_000, 10_000_000];

    public static async Task<int> RunAsync()
    {
        foreach (var size in Sizes)
        {
            await using var station = await BoardStation.StartAsync(size);
            using var person = await station.PersonAsync(1);
            var times = new PageTimes();
            await person.VisitAsync(station.Pages, WarmingTimes, (_, _) => { });
            await person.VisitAsync(station.Pages, Times, times.Note);
            times.Print($"one person, nothing loaded, {size:N0} readings");
        }

        Figures.PrintLoad();
        return 0;
    }
}
