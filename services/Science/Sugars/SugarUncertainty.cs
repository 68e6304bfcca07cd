using LabPipeline.Science.Units;

namespace LabPipeline.Science.Sugars;

/// <summary>Standard uncertainty of sugar contents by the law of propagation of uncertainty (JCGM 100:2008, 5.1.2), inputs independent.</summary>
public static class SugarUncertainty
{
    /// <summary>Content in mg/g: y = c V DF / m.</summary>
    /// <param name="gramsPerLitre">Concentration in g/L.</param>
    /// <param name="volumeMillilitres">Extract volume in mL.</param>
    /// <param name="dilution">Dilution factor.</param>
    /// <param name="freshMassGrams">Fresh mass in g, not zero.</param>
    public static UncertainValue MilligramsPerGram(
        UncertainValue gramsPerLitre, UncertainValue volumeMillilitres, UncertainValue dilution, UncertainValue freshMassGrams) =>
        gramsPerLitre * volumeMillilitres * dilution / freshMassGrams;

    /// <summary>Sucrose by inversion in mg/g: y = 1.900 (total - free) V DF / m. Large relative uncertainty where the two readings are close.</summary>
    public static UncertainValue SucroseByInversion(
        UncertainValue totalGramsPerLitre,
        UncertainValue freeGramsPerLitre,
        UncertainValue volumeMillilitres,
        UncertainValue dilution,
        UncertainValue freshMassGrams)
    {
        var factor = new UncertainValue((double)Inversion.SucrosePerGlucose, 0);
        return MilligramsPerGram((totalGramsPerLitre - freeGramsPerLitre) * factor, volumeMillilitres, dilution, freshMassGrams);
    }
}
