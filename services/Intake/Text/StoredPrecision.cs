using LabPipeline.Science.Quantities;

namespace LabPipeline.Intake.Text;

/// <summary>Keeps converted values within what every warehouse gives back unchanged: 15 significant digits, 12 decimals, below 10^15.</summary>
/// <remarks>
/// Numbers as read already fit (see <see cref="NumberGrammar"/>). A conversion can lengthen them (4321.5 lb has 13 digits in grams, 98.6 degF
/// endless ones in degC): rounded half to even once, here, so that a double in SQLite and decimal(28,12) in SQL Server agree to the last digit.
/// </remarks>
public static class StoredPrecision
{
    private const decimal Beyond = 1_000_000_000_000_000m;

    /// <summary>The storable value, or null when it is too large to store.</summary>
    public static decimal? Fit(decimal value)
    {
        var size = Math.Abs(value);
        if (size >= Beyond)
        {
            return null;
        }

        var decimals = UnitConversion.StoredDecimals;
        for (var bound = 1000m; size >= bound && decimals > 0; bound *= 10m)
        {
            decimals--;
        }

        return value.Scale <= decimals ? value : decimal.Round(value, decimals, MidpointRounding.ToEven);
    }
}
