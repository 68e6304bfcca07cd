namespace LabPipeline.Science.Barcodes;

/// <summary>What a label carries: the sample's barcode, and on the half of a tuber <c>-S</c> or <c>-F</c> after it, such as <c>26VR02000U-S</c>.</summary>
/// <remarks>
/// The two halves of a tuber carry different codes, so that a swapped half is found by the scanner and not by nobody. A hyphen is in no barcode, and
/// the check character covers the barcode alone: with or without the ending it is the same sample.
/// </remarks>
public static class HalfCode
{
    private const char Hyphen = '-';

    /// <summary>S for sugar, F for frying.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not of the enumeration.</exception>
    public static char LetterOf(TuberHalf half) => half switch
    {
        TuberHalf.Sugar => 'S',
        TuberHalf.Fry => 'F',
        _ => throw new ArgumentOutOfRangeException(nameof(half), half, "Expected Sugar or Fry."),
    };

    /// <summary>What stands after the barcode: <c>-S</c> or <c>-F</c>.</summary>
    public static string EndingOf(TuberHalf half) => $"{Hyphen}{LetterOf(half)}";

    /// <summary>The code on a label: <paramref name="barcode"/> alone for a whole sample, and its half after it for a half.</summary>
    public static string Write(string barcode, TuberHalf? half) => half is { } one ? barcode + EndingOf(one) : barcode;

    /// <summary>Reads a scanned or typed code as <see cref="SampleBarcode.Read"/> does, with or without a half, in any case.</summary>
    /// <returns>The reading of the barcode without its ending, and the half that the ending names; null for a code without one.</returns>
    public static (BarcodeReading Reading, TuberHalf? Half) Read(string scanned)
    {
        ArgumentNullException.ThrowIfNull(scanned);
        var text = scanned.Trim([.. " \t\r\n"]);
        foreach (var half in Enum.GetValues<TuberHalf>())
        {
            if (text.EndsWith(EndingOf(half), StringComparison.OrdinalIgnoreCase))
            {
                return (SampleBarcode.Read(text[..^2]), half);
            }
        }

        return (SampleBarcode.Read(text), null);
    }
}
