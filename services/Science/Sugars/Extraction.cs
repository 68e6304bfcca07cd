using LabPipeline.Science.Units;

namespace LabPipeline.Science.Sugars;

/// <summary>How a tissue sample became an extract; turns g/L in the extract into mg per gram of fresh weight.</summary>
/// <remarks>mg/g = c(g/L) x V(mL) x DF / m(g), since 1 g/L is 1 mg/mL.</remarks>
public sealed record Extraction
{
    /// <param name="volumeMillilitres">Extract volume of <see cref="ExtractVolume"/>, above zero.</param>
    /// <param name="dilution">Dilution between extract and reading.</param>
    /// <param name="freshMassGrams">Fresh mass of the tissue, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A volume or mass of zero or less.</exception>
    public Extraction(decimal volumeMillilitres, DilutionFactor dilution, decimal freshMassGrams)
    {
        VolumeMillilitres = Require.Positive(volumeMillilitres, nameof(volumeMillilitres));
        FreshMassGrams = Require.Positive(freshMassGrams, nameof(freshMassGrams));
        Dilution = dilution;
    }

    /// <summary>Extract volume in mL.</summary>
    public decimal VolumeMillilitres { get; }

    /// <summary>Fresh mass of the tissue in g.</summary>
    public decimal FreshMassGrams { get; }

    /// <summary>Dilution between extract and reading.</summary>
    public DilutionFactor Dilution { get; }

    /// <summary>mg per gram of fresh weight from a concentration in g/L; the sign is kept.</summary>
    public decimal MilligramsPerGram(decimal gramsPerLitre) => gramsPerLitre * VolumeMillilitres * Dilution.Value / FreshMassGrams;

    /// <summary>mg per gram of fresh weight from a result in g/L; its quantitation limit goes through the same V, DF and m.</summary>
    public LabResult MilligramsPerGram(LabResult gramsPerLitre)
    {
        ArgumentNullException.ThrowIfNull(gramsPerLitre);
        return gramsPerLitre.Scale(VolumeMillilitres * Dilution.Value / FreshMassGrams);
    }
}
