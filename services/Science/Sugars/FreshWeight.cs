using LabPipeline.Science.Units;

namespace LabPipeline.Science.Sugars;

/// <summary>Ways to write a content per fresh weight, and ratios of contents.</summary>
public static class FreshWeight
{
    /// <summary>% of fresh weight = mg/g / 10.</summary>
    public static decimal Percent(decimal milligramsPerGram) => milligramsPerGram / 10m;

    /// <summary>mg/kg (ppm by mass) = mg/g x 1000.</summary>
    public static decimal MilligramsPerKilogram(decimal milligramsPerGram) => milligramsPerGram * 1000m;

    /// <summary>mg/g from expressed sap: c(g/L) / density(g/mL) x water fraction of the tissue.</summary>
    /// <remarks>An approximation (no source): all sugar is taken to be dissolved in the tissue water, and the sap to be like all of it.</remarks>
    /// <param name="gramsPerLitre">Concentration in the sap, sign kept.</param>
    /// <param name="densityGramsPerMillilitre">Density of the sap, above zero; about 1.03.</param>
    /// <param name="waterFraction">Mass of water per mass of tissue, 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static decimal FromExpressedSap(decimal gramsPerLitre, decimal densityGramsPerMillilitre, decimal waterFraction) =>
        gramsPerLitre / Require.Positive(densityGramsPerMillilitre, nameof(densityGramsPerMillilitre)) * Require.Between(waterFraction, 0m, 1m, nameof(waterFraction));

    /// <summary>Glucose : sucrose, both in mg/g. Also called the glucose-forming potential.</summary>
    /// <returns>The ratio; not estimable when either is below its limit, an interval, or sucrose is not above zero.</returns>
    public static Estimable<decimal> GlucoseSucroseRatio(LabResult glucose, LabResult sucrose)
    {
        ArgumentNullException.ThrowIfNull(glucose);
        ArgumentNullException.ThrowIfNull(sucrose);
        if (glucose.Kind != ResultKind.Measured || sucrose.Kind != ResultKind.Measured)
        {
            return Estimable<decimal>.Not($"glucose is {glucose} and sucrose is {sucrose}; both must be measured");
        }

        return sucrose.Value > 0m ? glucose.Value / sucrose.Value : Estimable<decimal>.Not($"sucrose is {sucrose}, not above zero");
    }
}
