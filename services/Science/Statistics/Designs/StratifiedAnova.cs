using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Designs;

/// <summary>
/// Analysis of variance with error strata: the data are projected onto units of each size (blocks, main plots, plots, rows within), and
/// each treatment term is tested against the residual of the stratum in which it varies. Split-plots, subsampling and split-plots
/// in time are all stated this way. Wilkinson and Rogers 1973; Heiberger 1989 (from memory).
/// </summary>
/// <remarks>
/// Exact for designs in which every treatment term lies in one stratum (<see cref="StratifiedFit.IsOrthogonal"/>). With missing plots a
/// term spreads over strata: the table is then refused and the mixed model fitted by REML is the right tool.
/// </remarks>
public static class StratifiedAnova
{
    /// <param name="data">Response and factors.</param>
    /// <param name="treatments">Treatment terms, in order.</param>
    /// <param name="units">Units from the largest to the smallest: ["block"], ["block", "block:irrigation"]; rows within are added.</param>
    /// <param name="kind">Sums of squares within each stratum.</param>
    /// <exception cref="ArgumentException">Unknown or repeated terms, a covariate, or no unit.</exception>
    public static StratifiedFit Fit(ModelData data, IReadOnlyList<Term> treatments, IReadOnlyList<Term> units, SumsOfSquares kind = SumsOfSquares.Sequential)
    {
        ArgumentNullException.ThrowIfNull(data);
        ArgumentNullException.ThrowIfNull(treatments);
        ArgumentNullException.ThrowIfNull(units);
        data.RequireFactorsOnly(treatments.Concat(units));
        return units.Count > 0
            ? new StratifiedFit(data, ModelMatrix.Build(data, treatments, Coding.SumToZero), new UnitProjection(data, units), kind)
            : throw new ArgumentException("Found no unit; expected at least one, such as the block.", nameof(units));
    }
}
