using LabPipeline.Science.Units;

namespace LabPipeline.Science.Sugars;

/// <summary>Sucrose by inversion: the glucose set free by invertase, times the mass ratio of sucrose to glucose.</summary>
/// <remarks>
/// sucrose = (total - free glucose) x 342.297/180.156 = difference x 1.90000. Fructose does not enter: one sucrose gives one glucose.
/// A negative difference stays negative, so that means are not biased; it is below any limit and worth an alert.
/// </remarks>
public static class Inversion
{
    /// <summary>g of sucrose per g of glucose set free, 1.900003...; often rounded to 1.9.</summary>
    public const decimal SucrosePerGlucose = MolarMass.Sucrose / MolarMass.Glucose;

    /// <summary>Sucrose in the unit of the two readings (g/L, mg/dL or mg/g, not mmol/L); the sign is kept.</summary>
    /// <param name="totalGlucose">Glucose after inversion, already corrected for the enzyme volume.</param>
    /// <param name="freeGlucose">Glucose before inversion.</param>
    public static decimal Sucrose(decimal totalGlucose, decimal freeGlucose) => (totalGlucose - freeGlucose) * SucrosePerGlucose;

    /// <summary>Sucrose from two results with their quantitation limits, in their unit.</summary>
    /// <returns>
    /// A value with limit 1.900 x sqrt(L_total² + L_free²) when both readings have numbers (the limits are taken as multiples of independent
    /// standard deviations); otherwise the interval that the readings allow: free glucose "below 0.005" leaves it between 0 and 0.005.
    /// </returns>
    public static LabResult Sucrose(LabResult totalGlucose, LabResult freeGlucose)
    {
        ArgumentNullException.ThrowIfNull(totalGlucose);
        ArgumentNullException.ThrowIfNull(freeGlucose);
        if (totalGlucose.Raw is { } total && freeGlucose.Raw is { } free)
        {
            return LabResult.Of(Sucrose(total, free), LimitOf(totalGlucose.Limit, freeGlucose.Limit));
        }

        var (totalLow, totalHigh) = Bounds(totalGlucose);
        var (freeLow, freeHigh) = Bounds(freeGlucose);
        return LabResult.Between(Sucrose(totalLow, freeHigh), Sucrose(totalHigh, freeLow));
    }

    private static (decimal Low, decimal High) Bounds(LabResult result) => result.Raw is { } raw ? (raw, raw) : (result.Low, result.High);

    private static decimal? LimitOf(decimal? total, decimal? free) => (total, free) switch
    {
        (null, null) => null,
        _ => SucrosePerGlucose * DecimalRoot.Sqrt((total ?? 0m) * (total ?? 0m) + ((free ?? 0m) * (free ?? 0m))),
    };
}
