namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>The distinct times of the pulls, ascending.</summary>
internal sealed class PullTimes
{
    private readonly double[] _times;
    private readonly double _shortest;

    public PullTimes(IEnumerable<double> times)
    {
        _times = [.. times.Distinct().Order()];
        _shortest = _times.Length < 2 ? 1 : _times.Zip(_times.Skip(1), (early, late) => late - early).Min();
    }

    public int Count => _times.Length;

    public double this[int index] => _times[index];

    public int PositionOf(double time) => Array.BinarySearch(_times, time);

    /// <summary>Distance of two pulls in units of the shortest interval.</summary>
    public double Lag(int first, int second) => Math.Abs(_times[first] - _times[second]) / _shortest;
}
