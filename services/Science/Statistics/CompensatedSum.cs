namespace LabPipeline.Science.Statistics;

/// <summary>A sum that carries the rounding error of every addition along (Neumaier 1974).</summary>
internal struct CompensatedSum
{
    private double _sum;
    private double _lost;

    internal readonly double Value => _sum + _lost;

    internal void Add(double value)
    {
        var next = _sum + value;
        _lost += Math.Abs(_sum) >= Math.Abs(value) ? (_sum - next) + value : (value - next) + _sum;
        _sum = next;
    }
}
