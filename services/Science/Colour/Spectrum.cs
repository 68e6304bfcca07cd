using LabPipeline.Science.Units;

namespace LabPipeline.Science.Colour;

/// <summary>A reflectance curve at equally spaced wavelengths.</summary>
public sealed record Spectrum
{
    /// <summary>Instruments that report white as 100 must be divided by 100 first; 2 leaves room for calibration error, not for a percentage.</summary>
    private const double LargestReflectance = 2;

    /// <param name="firstNm">First wavelength in nm.</param>
    /// <param name="stepNm">5, 10 or 20 nm.</param>
    /// <param name="reflectances">Reflectance as a share, 0 to 2; 1 is the perfect diffuser. Two or more.</param>
    /// <exception cref="ArgumentException">Step, number of values or a value is out of range.</exception>
    public Spectrum(int firstNm, int stepNm, IReadOnlyList<double> reflectances)
    {
        ArgumentNullException.ThrowIfNull(reflectances);
        if (stepNm is not (5 or 10 or 20) || reflectances.Count < 2)
        {
            throw new ArgumentException($"Found {reflectances.Count} reflectances every {stepNm} nm, expected two or more every 5, 10 or 20 nm.", nameof(reflectances));
        }

        foreach (var reflectance in reflectances)
        {
            Require.Between(reflectance, 0, LargestReflectance, "a reflectance as a share");
        }

        FirstNm = firstNm;
        StepNm = stepNm;
        Reflectances = [.. reflectances];
    }

    public int FirstNm { get; }

    public int StepNm { get; }

    public IReadOnlyList<double> Reflectances { get; }

    public int LastNm => FirstNm + ((Reflectances.Count - 1) * StepNm);
}
