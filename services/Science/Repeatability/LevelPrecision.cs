using LabPipeline.Science.Units;

namespace LabPipeline.Science.Repeatability;

/// <summary>Repeatability at one level of the measurand.</summary>
public sealed record LevelPrecision
{
    /// <param name="level">Mean m of the results, above zero.</param>
    /// <param name="standardDeviation">s_r at the level, in the unit of the level, above zero.</param>
    /// <param name="degreesOfFreedom">Its degrees of freedom, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public LevelPrecision(double level, double standardDeviation, int degreesOfFreedom)
    {
        Level = Require.Positive(level, nameof(level));
        StandardDeviation = Require.Positive(standardDeviation, nameof(standardDeviation));
        DegreesOfFreedom = Require.Positive(degreesOfFreedom, nameof(degreesOfFreedom));
    }

    public double Level { get; }

    public double StandardDeviation { get; }

    public int DegreesOfFreedom { get; }
}
