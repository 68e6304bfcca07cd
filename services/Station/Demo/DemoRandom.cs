namespace LabPipeline.Station.Demo;

/// <summary>The scenario's own source of chance, so that it is the same on every machine and runtime.</summary>
/// <remarks>
/// SplitMix64 (Steele, Lea, Flood 2014). Every quantity draws from a stream named after what it belongs to, so that a file added or left out
/// changes no other value.
/// </remarks>
internal sealed class DemoRandom(ulong seed)
{
    /// <summary>The one number the whole scenario follows from.</summary>
    public const ulong Seed = 20250909;

    private const double TruncatedAt = 2.2;
    private const ulong NameOffset = 14695981039346656037;
    private const ulong NamePrime = 1099511628211;

    private ulong _state = seed;

    /// <summary>The stream called <paramref name="name"/>.</summary>
    public static DemoRandom For(string name) =>
        new(Seed ^ name.Aggregate(NameOffset, (hash, character) => unchecked((hash ^ character) * NamePrime)));

    public ulong Next()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15;
            var mixed = _state;
            mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9;
            mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
            return mixed ^ (mixed >> 31);
        }
    }

    /// <summary>From 0, included, to 1, excluded.</summary>
    public double Unit() => (Next() >> 11) * (1.0 / (1UL << 53));

    public int Below(int count) => (int)(Unit() * count);

    public bool Chance(double probability) => Unit() < probability;

    /// <summary>A normal deviate within 2.2 standard deviations: nothing in the scenario is odd by chance, only what was planted.</summary>
    /// <remarks>The sum of twelve uniform deviates; additions alone, which no runtime computes otherwise.</remarks>
    public double Normal()
    {
        while (true)
        {
            var sum = -6.0;
            for (var term = 0; term < 12; term++)
            {
                sum += Unit();
            }

            if (Math.Abs(sum) <= TruncatedAt)
            {
                return sum;
            }
        }
    }
}
