namespace LabPipeline.Science.Barcodes;

/// <summary>ISO/IEC 7064 MOD 11-2: one check character 0-9 or X for a numeric payload.</summary>
/// <remarks>The sum of digit x 2^position over payload and check is 1 modulo 11; X stands for 10. Source: ISO/IEC 7064:2003, pure systems.</remarks>
public static class Mod11x2
{
    private const string Expected = "digits 0-9";

    /// <summary>The check character of <paramref name="payload"/>.</summary>
    /// <exception cref="ArgumentException">The payload is empty or holds something other than digits.</exception>
    public static char Compute(string payload)
    {
        var check = PureSystem.Check(Alphanumerics.ValuesOf(payload, 10, Expected), 11);
        return check == 10 ? 'X' : Alphanumerics.At(check);
    }

    /// <summary>Whether the last character of <paramref name="text"/> is the check character of the rest. False for a text that cannot be one.</summary>
    public static bool Verify(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length >= 2 && text[..^1].All(char.IsAsciiDigit) && Compute(text[..^1]) == text[^1];
    }
}
