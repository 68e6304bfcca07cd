using System.Globalization;

namespace LabPipeline.Science.Barcodes;

/// <summary>The text identity of a sample: a payload (season + trial + running number, or the like) and its MOD 37,36 check character.</summary>
/// <remarks>
/// Upper case A-Z and 0-9. The payload never holds I, O or Q, which people read as 1 and 0; numbers whose check character would be one of
/// them are skipped by <see cref="Series"/>, so no printed label carries them. A check character I, O or Q of an id made elsewhere is accepted:
/// misreading it cannot pass the check. Always text: <c>1E5</c> is never a number.
/// </remarks>
public sealed record SampleBarcode
{
    /// <summary>Shortest barcode, check character included.</summary>
    public const int ShortestLength = 4;

    /// <summary>Longest barcode, check character included; longer symbols do not fit a tag in Code 128.</summary>
    public const int LongestLength = 24;

    private const string Ambiguous = "IOQ";

    private SampleBarcode(string payload, char check)
    {
        Payload = payload;
        Check = check;
    }

    /// <summary>Everything before the check character.</summary>
    public string Payload { get; }

    /// <summary>The ISO/IEC 7064 MOD 37,36 check character.</summary>
    public char Check { get; }

    /// <summary>Payload and check character, as printed.</summary>
    public string Text => Payload + Check;

    /// <summary>Reads a scanned or typed text. Line ends, tabs and spaces around it are taken off and lower case is raised; nothing else is mended.</summary>
    public static BarcodeReading Read(string scanned)
    {
        ArgumentNullException.ThrowIfNull(scanned);
        var text = scanned.Trim([.. " \t\r\n"]);
        var refusal = Judge(text);
        return refusal == BarcodeRefusal.None
            ? new BarcodeReading(new SampleBarcode(Upper(text)[..^1], Upper(text)[^1]), refusal, "")
            : new BarcodeReading(null, refusal, Explain(text, refusal));
    }

    /// <summary>Reads a text that must be a sample barcode.</summary>
    /// <exception cref="FormatException">It is not; the message says why.</exception>
    public static SampleBarcode Parse(string scanned)
    {
        var reading = Read(scanned);
        return reading.Barcode ?? throw new FormatException(reading.Explanation);
    }

    /// <summary>The barcode of a payload: the payload and its check character.</summary>
    /// <exception cref="ArgumentException">The payload has a wrong length, a character outside A-Z and 0-9, or I, O, Q.</exception>
    public static SampleBarcode FromPayload(string payload)
    {
        ArgumentNullException.ThrowIfNull(payload);
        var refusal = JudgePayload(payload, payload.Length + 1);
        if (refusal != BarcodeRefusal.None || payload.Any(char.IsAsciiLetterLower))
        {
            throw new ArgumentException(
                $"Found the barcode payload '{payload}', expected {ShortestLength - 1} to {LongestLength - 1} characters A-Z and 0-9 without I, O, Q.",
                nameof(payload));
        }

        return new SampleBarcode(payload, Mod37x36.Compute(payload));
    }

    /// <summary>Barcodes of consecutive running numbers, skipping those whose check character would be I, O or Q (one in twelve).</summary>
    /// <param name="season">Season code, such as <c>26</c>.</param>
    /// <param name="trial">Trial code, such as <c>NT</c>.</param>
    /// <param name="first">First running number tried, 0 or more.</param>
    /// <param name="digits">Digits of the running number, 1 to 9, padded with zeros.</param>
    /// <returns>The barcodes up to the last number that fits the digits; take as many as needed.</returns>
    /// <exception cref="ArgumentException">A code or the number is out of range.</exception>
    public static IEnumerable<SampleBarcode> Series(string season, string trial, int first, int digits = 4)
    {
        ArgumentException.ThrowIfNullOrEmpty(season);
        ArgumentException.ThrowIfNullOrEmpty(trial);
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        ArgumentOutOfRangeException.ThrowIfLessThan(digits, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(digits, 9);
        _ = FromPayload(season + trial + new string('0', digits));
        var last = (int)Math.Pow(10, digits) - 1;
        return Enumerable.Range(first, Math.Max(0, last - first + 1))
            .Select(number => FromPayload(season + trial + number.ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0')))
            .Where(barcode => !Ambiguous.Contains(barcode.Check, StringComparison.Ordinal));
    }

    public override string ToString() => Text;

    private static BarcodeRefusal Judge(string text)
    {
        if (text.Length == 0)
        {
            return BarcodeRefusal.Empty;
        }

        var refusal = JudgePayload(text[..^1], text.Length);
        if (refusal is BarcodeRefusal.None && !char.IsAsciiLetterOrDigit(text[^1]))
        {
            return BarcodeRefusal.Character;
        }

        return refusal is BarcodeRefusal.None && !Mod37x36.Verify(Upper(text)) ? BarcodeRefusal.CheckCharacter : refusal;
    }

    private static BarcodeRefusal JudgePayload(string payload, int wholeLength)
    {
        if (!payload.All(char.IsAsciiLetterOrDigit))
        {
            return BarcodeRefusal.Character;
        }

        if (wholeLength is < ShortestLength or > LongestLength)
        {
            return BarcodeRefusal.Length;
        }

        return Upper(payload).AsSpan().ContainsAny(Ambiguous) ? BarcodeRefusal.AmbiguousLetter : BarcodeRefusal.None;
    }

    private static string Explain(string text, BarcodeRefusal refusal) => refusal switch
    {
        BarcodeRefusal.Empty => "Found nothing, expected a sample barcode; scan the label again.",
        BarcodeRefusal.Length => $"Found {text.Length} characters in '{text}', expected {ShortestLength} to {LongestLength}; scan the label again.",
        BarcodeRefusal.Character => $"Found a character outside A-Z and 0-9 in '{text}', expected a sample barcode; scan the label again.",
        BarcodeRefusal.AmbiguousLetter => $"Found I, O or Q in '{text}', expected a barcode without them; read 1 for I and 0 for O or Q, or scan the label.",
        // The right check character is not shown: whoever types it in would defeat the check.
        _ => $"Found '{text}', whose last character does not belong to the rest, expected a barcode as printed; "
            + "one character is wrong or missing: scan the label again.",
    };

    // Only A-Z can be here; the culture-free table avoids Turkish i and the long s.
    private static string Upper(string text) => text.ToUpperInvariant();
}
