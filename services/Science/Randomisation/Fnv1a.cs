using System.Text;

namespace LabPipeline.Science.Randomisation;

/// <summary>FNV-1a, 64 bits: a number for a name, the same on every machine and runtime.</summary>
/// <remarks>
/// Start with 14695981039346656037; for every byte of the UTF-8 text: hash = (hash xor byte) x 1099511628211 mod 2^64. Not for secrets.
/// Source: Fowler, Noll, Vo; draft-eastlake-fnv.
/// </remarks>
public static class Fnv1a
{
    private const ulong Offset = 14695981039346656037;
    private const ulong Prime = 1099511628211;

    /// <summary>The hash of <paramref name="text"/>, any text, the empty one included.</summary>
    public static ulong Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Encoding.UTF8.GetBytes(text).Aggregate(Offset, (hash, value) => unchecked((hash ^ value) * Prime));
    }
}
