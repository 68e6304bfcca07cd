using LabPipeline.Science.Units;

namespace LabPipeline.Science.Gravity;

/// <summary>Specific gravity of tubers from weighing in air and under water.</summary>
/// <remarks>
/// SG = a / (a - b) with a the weight in air and b the weight in water of the same washed, dried tubers, the sling tared. It is relative to the
/// water used; <see cref="AtReferenceTemperature"/> refers it to another water temperature. Buoyancy in air (about 0.0001) is neglected, as in trade practice.
/// </remarks>
public static class SpecificGravity
{
    /// <summary>Mass of the official underwater-weight sample in g.</summary>
    public const decimal OfficialSampleGrams = 5050m;

    /// <summary>SG from two weights in one unit, whichever it is.</summary>
    /// <param name="weightInAir">Above zero.</param>
    /// <param name="weightInWater">Zero or more and less than the weight in air. Zero means the sample just floats.</param>
    /// <exception cref="ArgumentOutOfRangeException">A weight is out of range.</exception>
    public static decimal FromWeights(decimal weightInAir, decimal weightInWater)
    {
        var air = Require.Positive(weightInAir, nameof(weightInAir));
        var water = Require.NotNegative(weightInWater, nameof(weightInWater));
        return water < air
            ? air / (air - water)
            : throw Require.Out(weightInWater, nameof(weightInWater), "less than the weight in air");
    }

    /// <summary>Underwater weight in g of a sample of given mass: UWW = m (1 - 1/SG).</summary>
    /// <param name="specificGravity">1 or more.</param>
    /// <param name="sampleGrams">Mass in air in g, above zero; 5050 g in the official method, 5000 g in some trade tables.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static decimal UnderwaterWeightGrams(decimal specificGravity, decimal sampleGrams = OfficialSampleGrams) =>
        Require.Positive(sampleGrams, nameof(sampleGrams)) * (1m - (1m / RequireSinking(specificGravity)));

    /// <summary>SG from an underwater weight of a sample of given mass, both in g.</summary>
    public static decimal FromUnderwaterWeight(decimal underwaterWeightGrams, decimal sampleGrams = OfficialSampleGrams) =>
        FromWeights(sampleGrams, underwaterWeightGrams);

    /// <summary>Density of the tubers in g/mL: SG read x density of the weighing water (Tanaka et al. 2001).</summary>
    /// <param name="specificGravity">SG as weighed, above zero.</param>
    /// <param name="waterCelsius">Temperature of the weighing water, 0 to 40 °C.</param>
    public static double DensityGramsPerMillilitre(double specificGravity, double waterCelsius) =>
        Require.Positive(specificGravity, nameof(specificGravity)) * WaterDensity.KilogramsPerCubicMetre(waterCelsius) / 1000;

    /// <summary>SG as it would read in water of another temperature: SG x rho(weighing) / rho(reference). Thermal expansion of the tubers is neglected.</summary>
    /// <param name="specificGravity">SG as weighed, above zero.</param>
    /// <param name="waterCelsius">Temperature of the weighing water, 0 to 40 °C.</param>
    /// <param name="referenceCelsius">Temperature the trial reports at, 0 to 40 °C.</param>
    public static double AtReferenceTemperature(double specificGravity, double waterCelsius, double referenceCelsius) =>
        Require.Positive(specificGravity, nameof(specificGravity))
        * WaterDensity.KilogramsPerCubicMetre(waterCelsius) / WaterDensity.KilogramsPerCubicMetre(referenceCelsius);

    internal static decimal RequireSinking(decimal specificGravity) => specificGravity >= 1m
        ? specificGravity
        : throw Require.Out(specificGravity, "a specific gravity", "1 or more: tubers sink");
}
