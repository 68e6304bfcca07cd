using LabPipeline.Science.Units;

namespace LabPipeline.Science.Repeatability;

/// <summary>Two results of one sample under repeatability conditions, in one unit, unrounded.</summary>
public readonly record struct DuplicatePair(decimal First, decimal Second)
{
    /// <summary>|x1 - x2|.</summary>
    public decimal AbsoluteDifference => Math.Abs(First - Second);

    /// <summary>(x1 + x2) / 2.</summary>
    public decimal Mean => (First + Second) / 2m;

    /// <summary>Standard deviation of the two = |x1 - x2| / sqrt 2, one degree of freedom.</summary>
    public decimal StandardDeviation => AbsoluteDifference / DecimalRoot.Sqrt(2m);

    /// <summary>Relative percent difference = 100 |x1 - x2| / mean.</summary>
    /// <returns>Not estimable when the mean is not above zero.</returns>
    public Estimable<decimal> RelativePercentDifference => Relative(100m * AbsoluteDifference);

    /// <summary>Relative standard deviation in % = RPD / sqrt 2.</summary>
    /// <returns>Not estimable when the mean is not above zero.</returns>
    public Estimable<decimal> RelativeStandardDeviationPercent => Relative(100m * StandardDeviation);

    private Estimable<decimal> Relative(decimal hundredfold) => Mean > 0m
        ? hundredfold / Mean
        : Estimable<decimal>.Not(FormattableString.Invariant($"the mean {Mean} is not above zero"));
}
