namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>The range of k independent standard normal values.</summary>
/// <remarks>
/// P(W ≤ w) = k ∫ φ(z) [Φ(z) - Φ(z - w)]^(k-1) dz over the largest value z. With r = Φ(z - w) / Φ(z) the upper tail
/// is k ∫ φ(z) Φ(z)^(k-1) [1 - (1 - r)^(k-1)] dz, a sum of positive terms. Trapezoidal rule on the whole line.
/// </remarks>
internal sealed class NormalRange
{
    /// <summary>Beyond this the upper tail is below e^-400.</summary>
    private const double Widest = 40;

    private const double Reach = 8.5;

    private readonly int _k;
    private readonly double _step;
    private readonly double _lowest;
    private readonly double[] _weight;
    private readonly double[] _below;

    internal NormalRange(int k)
    {
        _k = k;
        _step = Math.Min(0.25, 0.7 / Math.Sqrt(k));
        _lowest = -_step * Math.Ceiling(Reach / _step);
        var nodes = (int)Math.Ceiling(((Widest / 2) + Reach - _lowest) / _step);
        _weight = new double[nodes];
        _below = new double[nodes];
        for (var node = 0; node < nodes; node++)
        {
            var z = _lowest + (node * _step);
            _below[node] = Normal.RawUpper(-z);
            _weight[node] = k * _step * Normal.RawDensity(z) * Complement.Power(_below[node], k - 1);
        }
    }

    internal double Upper(double w)
    {
        if (w >= Widest)
        {
            return 0;
        }

        var (first, last) = Nodes(Math.Max(-Math.Sqrt(84.0 / _k), (w / 2) - Reach), Math.Max(Reach, (w / 2) + Reach - 2));
        var sum = 0.0;
        for (var node = first; node <= last; node++)
        {
            var ratio = Normal.RawUpper(w - _lowest - (node * _step)) / _below[node];
            sum += _weight[node] * Complement.OfPower(ratio, _k - 1);
        }

        return Math.Min(sum, 1);
    }

    internal double Lower(double w)
    {
        var (first, last) = Nodes(-Reach, Reach);
        var sum = 0.0;
        for (var node = first; node <= last; node++)
        {
            var z = _lowest + (node * _step);
            var inside = z > 0 ? Normal.RawUpper(z - w) - Normal.RawUpper(z) : _below[node] - Normal.RawUpper(w - z);
            sum += _k * _step * Normal.RawDensity(z) * Complement.Power(inside, _k - 1);
        }

        return Math.Min(sum, 1);
    }

    private (int First, int Last) Nodes(double from, double to) => (
        Math.Max(0, (int)((from - _lowest) / _step)),
        Math.Min(_weight.Length - 1, (int)((to - _lowest) / _step) + 1));
}
