namespace LabPipeline.Science.Barcodes;

/// <summary>ISO/IEC 7064 MOD 37-2: one check character 0-9, A-Z or * for an alphanumeric payload.</summary>
/// <remarks>
/// The sum of value x 2^position over payload and check is 1 modulo 37; * stands for 36. Finds every swap of neighbours.
/// Source: ISO/IEC 7064:2003, pure systems.
/// </remarks>
public static class Mod37x2
{
    private const string Expected = "characters 0-9 and A-Z";

    /// <summary>The check character of <paramref name="payload"/>.</summary>
    /// <exception cref="ArgumentException">The payload is empty or holds another character than 0-9, A-Z.</exception>
    public static char Compute(string payload) =>
        Alphanumerics.At(PureSystem.Check(Alphanumerics.ValuesOf(payload, 36, Expected), 37));

    /// <summary>Whether the last character of <paramref name="text"/> is the check character of the rest. False for a text that cannot be one.</summary>
    public static bool Verify(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length >= 2
            && text[..^1].All(character => Alphanumerics.ValueOf(character, 36) >= 0)
            && Compute(text[..^1]) == text[^1];
    }
}
