using LabPipeline.Science.Statistics;

namespace LabPipeline.Science.ControlCharts;

/// <summary>Centre line and limits of a control chart, in the unit of what is plotted.</summary>
/// <param name="Centre">Centre line.</param>
/// <param name="Sigma">Standard error of a plotted point, above zero; a third of the distance to the limits before they are cut at zero.</param>
/// <param name="Lower">Lower limit.</param>
/// <param name="Upper">Upper limit.</param>
public sealed record ControlLimits(decimal Centre, decimal Sigma, decimal Lower, decimal Upper)
{
    /// <summary>Whether a point lies beyond a limit; a point on it is inside.</summary>
    public bool IsOut(decimal value) => value < Lower || value > Upper;

    /// <summary>Distance from the centre in standard errors, for the run rules.</summary>
    public decimal Z(decimal value) => (value - Centre) / Sigma;

    /// <summary>Limits at three standard errors.</summary>
    /// <exception cref="NotEstimableException">The standard error is zero: identical values say nothing about the spread.</exception>
    internal static ControlLimits ThreeSigma(decimal centre, decimal sigma, decimal? floor = null, decimal? ceiling = null)
    {
        if (sigma <= 0m)
        {
            throw new NotEstimableException("A control limit", "the values show no variation at all");
        }

        var (lower, upper) = (centre - (3m * sigma), centre + (3m * sigma));
        return new(centre, sigma, Math.Max(lower, floor ?? lower), Math.Min(upper, ceiling ?? upper));
    }
}
