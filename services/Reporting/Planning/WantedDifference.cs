using LabPipeline.Science.Statistics.Designs;

namespace LabPipeline.Reporting.Planning;

/// <summary>What a trial is to find: a difference in the quantity's unit, or a ratio, which is a difference of logarithms.</summary>
/// <param name="Amount">The difference, not 0; or the ratio, above 0 and not 1.</param>
/// <param name="IsRatio">Whether it is a ratio.</param>
public sealed record WantedDifference(double Amount, bool IsRatio)
{
    /// <summary>On the scale of analysis.</summary>
    internal double OnScale => IsRatio ? Math.Abs(Math.Log(Amount)) : Math.Abs(Amount);

    internal ResponseScale Scale => IsRatio ? ResponseScale.Log() : ResponseScale.Measured;
}
