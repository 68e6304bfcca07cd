namespace LabPipeline.Science.Barcodes;

/// <summary>The 107 symbol characters of Code 128 as widths of bar, space, bar, space, bar, space (and a last bar for stop).</summary>
/// <remarks>Source: ISO/IEC 15417:2007, table of symbol characters. Every character is 11 modules wide, stop is 13.</remarks>
public static class Code128Symbol
{
    public const int CodeC = 99;
    public const int CodeB = 100;
    public const int CodeA = 101;
    public const int StartA = 103;
    public const int StartB = 104;
    public const int StartC = 105;
    public const int Stop = 106;

    private static readonly string[] Widths =
        """
        212222 222122 222221 121223 121322 131222 122213 122312 132212 221213
        221312 231212 112232 122132 122231 113222 123122 123221 223211 221132
        221231 213212 223112 312131 311222 321122 321221 312212 322112 322211
        212123 212321 232121 111323 131123 131321 112313 132113 132311 211313
        231113 231311 112133 112331 132131 113123 113321 133121 313121 211331
        231131 213113 213311 213131 311123 311321 331121 312113 312311 332111
        314111 221411 431111 111224 111422 121124 121421 141122 141221 112214
        112412 122114 122411 142112 142211 241211 221114 413111 241112 134111
        111242 121142 121241 114212 124112 124211 411212 421112 421211 212141
        214121 412121 111143 111341 131141 114113 114311 411113 411311 113141
        114131 311141 411131 211412 211214 211232 2331112
        """.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Modules of one symbol character, 1 for bar and 0 for space.</summary>
    /// <param name="value">Symbol value, 0 to 106.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is no symbol value.</exception>
    public static string Modules(int value)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(value);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(value, Stop);
        return string.Concat(Widths[value].Select((width, index) => new string(index % 2 == 0 ? '1' : '0', width - '0')));
    }
}
