using LabPipeline.Science.Units;

namespace LabPipeline.Science.Sugars;

/// <summary>Mass concentration of a sugar in g/L from the units analysers use, and back.</summary>
/// <remarks>1 g/L = 100 mg/dL; c(g/L) = c(mmol/L) x M / 1000 with M of <see cref="MolarMass"/>. Signed readings stay signed.</remarks>
public static class Concentration
{
    private const decimal MilligramsPerDecilitrePerGramPerLitre = 100m;
    private const decimal MillimolesPerMole = 1000m;

    /// <summary>g/L from a reading in <paramref name="unit"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Unknown unit or sugar.</exception>
    public static decimal GramsPerLitre(decimal reading, ConcentrationUnit unit, Sugar sugar) => unit switch
    {
        ConcentrationUnit.GramPerLitre => reading,
        ConcentrationUnit.MilligramPerDecilitre => reading / MilligramsPerDecilitrePerGramPerLitre,
        ConcentrationUnit.MillimolePerLitre => reading * MolarMass.Of(sugar) / MillimolesPerMole,
        _ => throw UnknownUnit(unit),
    };

    /// <summary>Reading in <paramref name="unit"/> from g/L.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Unknown unit or sugar.</exception>
    public static decimal In(ConcentrationUnit unit, decimal gramsPerLitre, Sugar sugar) => unit switch
    {
        ConcentrationUnit.GramPerLitre => gramsPerLitre,
        ConcentrationUnit.MilligramPerDecilitre => gramsPerLitre * MilligramsPerDecilitrePerGramPerLitre,
        ConcentrationUnit.MillimolePerLitre => gramsPerLitre * MillimolesPerMole / MolarMass.Of(sugar),
        _ => throw UnknownUnit(unit),
    };

    /// <summary>Concentration before enzyme solution was added: c x (sample + enzyme) / sample. Units of the reading stay.</summary>
    /// <param name="measured">Concentration measured after the addition.</param>
    /// <param name="sampleMillilitres">Volume of extract taken, above zero.</param>
    /// <param name="enzymeMillilitres">Volume of enzyme solution added, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A volume is out of range.</exception>
    public static decimal BeforeEnzymeAddition(decimal measured, decimal sampleMillilitres, decimal enzymeMillilitres)
    {
        var sample = Require.Positive(sampleMillilitres, nameof(sampleMillilitres));
        return measured * (sample + Require.NotNegative(enzymeMillilitres, nameof(enzymeMillilitres))) / sample;
    }

    private static ArgumentOutOfRangeException UnknownUnit(ConcentrationUnit unit) =>
        new(nameof(unit), $"Found {unit}, expected g/L, mg/dL or mmol/L.");
}
