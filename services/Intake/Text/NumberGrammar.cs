namespace LabPipeline.Intake.Text;

/// <summary>Reads a number written exactly in the declared format, or refuses it. Knows no culture.</summary>
/// <remarks>
/// number = [+|-] whole [mark digits] [E [+|-] digits]; whole = digits, or 1 to 3 digits not starting with 0 and groups of exactly three.
/// Digits are ASCII; at least one stands on each side of the decimal mark. At most 15 significant digits as written and 12 decimals:
/// a binary double gives 15 digits back unchanged and decimal(28,12) holds them, so every warehouse stores the same number.
/// </remarks>
public static class NumberGrammar
{
    /// <summary>Most digits from the first that is not zero to the last written.</summary>
    public const int MaxSignificantDigits = 15;

    /// <summary>Most digits after the decimal mark.</summary>
    public const int MaxDecimals = 12;

    private const ulong Beyond = 1_000_000_000_000_000;

    /// <summary>Reads <paramref name="text"/>, which must hold the number and nothing else (no blanks).</summary>
    public static NumberFault Parse(ReadOnlySpan<char> text, NumberFormat format, out decimal value)
    {
        value = 0m;
        var negative = text.Length > 0 && text[0] == '-';
        var scan = new DigitScan(text, negative || (text.Length > 0 && text[0] == '+') ? 1 : 0);
        var fault = ReadWhole(ref scan, format);
        if (fault != NumberFault.None)
        {
            return fault;
        }

        var scale = 0;
        if (scan.Take(format.DecimalMark))
        {
            scale = scan.Digits();
            if (scale == 0)
            {
                return NumberFault.NotANumber;
            }
        }

        if (scan.AtExponent)
        {
            return format.AllowExponent ? WithExponent(ref scan, scale, negative, out value) : NumberFault.ExponentNotAllowed;
        }

        return scan.AtEnd ? Build(scan, scan.Mantissa, scale, negative, out value) : Stopped(scan.Current);
    }

    private static NumberFault ReadWhole(ref DigitScan scan, NumberFormat format)
    {
        var startsWithZero = scan.Current == '0';
        var first = scan.Digits();
        if (first == 0)
        {
            return NumberFault.NotANumber;
        }

        var mark = scan.Current;
        if (!format.IsGroupMark(mark))
        {
            return NumberFault.None;
        }

        // "0,052" with a comma as group mark would otherwise be read as 52.
        if (startsWithZero || first > 3)
        {
            return NumberFault.BadGrouping;
        }

        while (scan.Take(mark))
        {
            if (scan.Digits() != 3)
            {
                return NumberFault.BadGrouping;
            }
        }

        return NumberFault.None;
    }

    private static NumberFault WithExponent(ref DigitScan scan, int scale, bool negative, out decimal value)
    {
        value = 0m;
        var exponent = scan.Exponent();
        if (exponent is null || !scan.AtEnd)
        {
            return NumberFault.NotANumber;
        }

        var mantissa = scan.Mantissa;
        scale -= exponent.Value;
        for (; scale > MaxDecimals && mantissa % 10 == 0 && mantissa != 0; scale--)
        {
            mantissa /= 10;
        }

        for (; scale < 0 && mantissa != 0 && mantissa < Beyond; scale++)
        {
            mantissa *= 10;
        }

        return mantissa == 0 ? Build(scan, 0, 0, negative, out value) : Build(scan, mantissa, scale, negative, out value);
    }

    private static NumberFault Build(in DigitScan scan, ulong mantissa, int scale, bool negative, out decimal value)
    {
        value = 0m;
        if (scan.Significant > MaxSignificantDigits)
        {
            return NumberFault.TooManyDigits;
        }

        if (mantissa >= Beyond)
        {
            return NumberFault.TooLarge;
        }

        if (scale > MaxDecimals)
        {
            return NumberFault.TooManyDecimals;
        }

        value = new decimal((int)(uint)mantissa, (int)(uint)(mantissa >> 32), 0, negative && mantissa != 0, (byte)scale);
        return NumberFault.None;
    }

    private static NumberFault Stopped(char symbol) => symbol is '.' or ',' ? NumberFault.WrongMark : NumberFault.NotANumber;
}
