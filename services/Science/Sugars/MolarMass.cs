namespace LabPipeline.Science.Sugars;

/// <summary>Molar masses in g/mol, exact sums of the conventional atomic weights C 12.011, H 1.008, O 15.999.</summary>
/// <remarks>Source: IUPAC Commission on Isotopic Abundances and Atomic Weights, conventional values (from memory).</remarks>
public static class MolarMass
{
    private const decimal Carbon = 12.011m;
    private const decimal Hydrogen = 1.008m;
    private const decimal Oxygen = 15.999m;

    /// <summary>Water, H2O.</summary>
    public const decimal Water = (2 * Hydrogen) + Oxygen;

    /// <summary>Glucose, C6H12O6.</summary>
    public const decimal Glucose = (6 * Carbon) + (12 * Hydrogen) + (6 * Oxygen);

    /// <summary>Fructose, an isomer of glucose.</summary>
    public const decimal Fructose = Glucose;

    /// <summary>Sucrose, C12H22O11.</summary>
    public const decimal Sucrose = (12 * Carbon) + (22 * Hydrogen) + (11 * Oxygen);

    /// <summary>Molar mass of a sugar in g/mol.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such sugar.</exception>
    public static decimal Of(Sugar sugar) => sugar switch
    {
        Sugar.Glucose => Glucose,
        Sugar.Fructose => Fructose,
        Sugar.Sucrose => Sucrose,
        _ => throw new ArgumentOutOfRangeException(nameof(sugar), $"Found {sugar}, expected glucose, fructose or sucrose."),
    };
}
