using System.Numerics;

namespace LabPipeline.Science.Randomisation;

/// <summary>PCG-XSH-RR 64/32: the generator that designs, bench orders and blind codes are drawn with, so that a stated seed gives the same draw anywhere.</summary>
/// <remarks>
/// state = 6364136223846793005 x state + increment mod 2^64; output = (((old state >> 18) xor old state) >> 27) as 32 bits, rotated right by
/// old state >> 59. Period 2^64 for each of 2^63 streams. The increment is 2 x stream + 1; the first state is 0, stepped, the seed added, stepped.
/// Source: M. E. O'Neill, PCG: a family of simple fast space-efficient statistically good algorithms for random number generation,
/// Harvey Mudd College HMC-CS-2014-0905, 2014. Not for secrets.
/// </remarks>
public sealed class Pcg32
{
    private const ulong Multiplier = 6364136223846793005;

    private readonly ulong _increment;
    private ulong _state;

    /// <summary>The stream <paramref name="stream"/> of the generator, seeded with <paramref name="seed"/>; any two numbers.</summary>
    public Pcg32(ulong seed, ulong stream)
    {
        _increment = unchecked((stream << 1) | 1);
        Step();
        unchecked
        {
            _state += seed;
        }

        Step();
    }

    /// <summary>The stream called <paramref name="name"/>, whose number is <see cref="Fnv1a"/> of the name: what is added or left out elsewhere changes no draw of this one.</summary>
    /// <param name="seed">The stated seed, 0 or more.</param>
    /// <param name="name">What is drawn, such as <c>NT26/block 2</c>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The seed is negative.</exception>
    public static Pcg32 Named(long seed, string name)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(seed);
        ArgumentException.ThrowIfNullOrEmpty(name);
        return new Pcg32((ulong)seed, Fnv1a.Of(name));
    }

    /// <summary>The next 32 random bits.</summary>
    public uint Next()
    {
        var old = _state;
        Step();
        return BitOperations.RotateRight((uint)(((old >> 18) ^ old) >> 27), (int)(old >> 59));
    }

    /// <summary>A whole number from 0 to <paramref name="bound"/> - 1, each equally likely.</summary>
    /// <remarks>Of the 2^32 outputs the first 2^32 mod bound are drawn again, so that what remains divides evenly.</remarks>
    /// <param name="bound">1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The bound is below 1.</exception>
    public int Below(int bound)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(bound, 1);
        var unfair = (uint)((1UL << 32) % (uint)bound);
        uint drawn;
        do
        {
            drawn = Next();
        }
        while (drawn < unfair);

        return (int)(drawn % (uint)bound);
    }

    /// <summary>The items in random order, every order equally likely.</summary>
    /// <remarks>
    /// From the last place to the second: exchange it with one of the places up to itself. Source: R. Durstenfeld, Algorithm 235: random
    /// permutation, Communications of the ACM 7 (1964) 420.
    /// </remarks>
    public IReadOnlyList<T> Shuffle<T>(IEnumerable<T> items)
    {
        T[] shuffled = [.. items];
        for (var last = shuffled.Length - 1; last >= 1; last--)
        {
            var chosen = Below(last + 1);
            (shuffled[chosen], shuffled[last]) = (shuffled[last], shuffled[chosen]);
        }

        return shuffled;
    }

    private void Step() => _state = unchecked((_state * Multiplier) + _increment);
}
