using System.Globalization;
using System.Text.RegularExpressions;
using LabPipeline.Intake.Text;

namespace LabPipeline.Intake.Tests.Text;

/// <summary>The number grammar again, slow and obvious: a regular expression for the shape, then arithmetic on the digits as text.</summary>
internal static class NumberReference
{
    public static decimal? Parse(string text, NumberFormat format)
    {
        var mark = Regex.Escape(format.DecimalMark.ToString());
        var groups = format.Group switch
        {
            GroupMark.Point => ["\\."],
            GroupMark.Comma => [","],
            GroupMark.Space => [" ", "\u00A0", "\u202F"],
            GroupMark.Apostrophe => ["'", "\u2019"],
            _ => Array.Empty<string>(),
        };
        var whole = string.Join("|", groups.Select(group => $"[1-9][0-9]{{0,2}}(?:{group}[0-9]{{3}})+").Append("[0-9]+"));
        var exponent = format.AllowExponent ? "(?:[eE](?<exponent>[+-]?[0-9]{1,3}))?" : "";
        var match = Regex.Match(text, $@"\A(?<sign>[+-]?)(?<whole>{whole})(?:{mark}(?<decimals>[0-9]+))?{exponent}\z", RegexOptions.CultureInvariant);
        return match.Success ? Value(match) : null;
    }

    private static decimal? Value(Match match)
    {
        var whole = Regex.Replace(match.Groups["whole"].Value, "[^0-9]", "");
        var decimals = match.Groups["decimals"].Value;
        if ((whole + decimals).TrimStart('0').Length > 15)
        {
            return null;
        }

        var shift = match.Groups["exponent"].Success && match.Groups["exponent"].Value.Length > 0
            ? int.Parse(match.Groups["exponent"].Value, CultureInfo.InvariantCulture)
            : (int?)null;
        var digits = System.Numerics.BigInteger.Parse(whole + decimals, CultureInfo.InvariantCulture);
        var places = decimals.Length - (shift ?? 0);
        while (shift is not null && places > 12 && !digits.IsZero && digits % 10 == 0)
        {
            digits /= 10;
            places--;
        }

        if (shift is not null && digits.IsZero)
        {
            places = 0;
        }

        if (places < 0)
        {
            digits *= System.Numerics.BigInteger.Pow(10, -places);
            places = 0;
        }

        return places > 12 || digits >= System.Numerics.BigInteger.Pow(10, 15)
            ? null
            : decimal.Parse((match.Groups["sign"].Value == "-" ? "-" : "") + Shifted(digits.ToString(CultureInfo.InvariantCulture), places), NumberStyles.Number, CultureInfo.InvariantCulture);
    }

    private static string Shifted(string digits, int places)
    {
        var padded = digits.PadLeft(places + 1, '0');
        return places == 0 ? padded : padded[..^places] + "." + padded[^places..];
    }
}
