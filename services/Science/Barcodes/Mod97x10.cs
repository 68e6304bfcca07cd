using System.Globalization;

namespace LabPipeline.Science.Barcodes;

/// <summary>ISO/IEC 7064 MOD 97-10: two check digits; the whole number leaves the remainder 1 when divided by 97.</summary>
/// <remarks>
/// The standard's payload is numeric. Letters are read as the two digits of their value, A = 10 to Z = 35, the way bank account numbers
/// (ISO 13616) use the system. Finds every single wrong character and every swap of neighbouring digits. Source: ISO/IEC 7064:2003, pure systems.
/// </remarks>
public static class Mod97x10
{
    private const string Expected = "characters 0-9 and A-Z";

    /// <summary>The two check digits of <paramref name="payload"/>, "02" to "98".</summary>
    /// <exception cref="ArgumentException">The payload is empty or holds another character than 0-9, A-Z.</exception>
    public static string Compute(string payload)
    {
        var remainder = Remainder(Alphanumerics.ValuesOf(payload, 36, Expected)) * 100 % 97;
        return (98 - remainder).ToString("00", CultureInfo.InvariantCulture);
    }

    /// <summary>Whether the last two characters of <paramref name="text"/> are the check digits of the rest. False for a text that cannot be one.</summary>
    public static bool Verify(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length >= 3
            && text.All(character => Alphanumerics.ValueOf(character, 36) >= 0)
            && string.Equals(Compute(text[..^2]), text[^2..], StringComparison.Ordinal);
    }

    private static int Remainder(IEnumerable<int> values) =>
        values.Aggregate(0, (remainder, value) => ((value < 10 ? remainder * 10 : remainder * 100) + value) % 97);
}
