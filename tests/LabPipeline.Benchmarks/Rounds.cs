namespace LabPipeline.Benchmarks;

/// <summary>Seconds of each side, round by round.</summary>
internal sealed class Rounds
{
    private readonly Dictionary<string, List<double>> _times = [];

    public void Add(string side, double seconds)
    {
        if (!_times.TryGetValue(side, out var times))
        {
            _times.Add(side, times = []);
        }

        times.Add(seconds);
    }

    public double Median(string side) => Figures.Median(_times[side]);

    public void PrintLast(int round) =>
        Figures.Print($"round {round}: {string.Join(", ", _times.Select(entry => FormattableString.Invariant($"{entry.Key} {entry.Value[^1]:0.00} s")))}");

    /// <summary>A line for each side; its rate counts <paramref name="things"/>, and the last column says how much longer it takes than <paramref name="ours"/>.</summary>
    public void PrintTable(string ours, double things, string unit)
    {
        foreach (var side in _times.Keys)
        {
            Figures.Print($"{side,-24} {Median(side),7:0.00} s {things / Median(side),12:N0} {unit}/s   {Median(side) / Median(ours),6:0.00} times ours");
        }
    }
}
