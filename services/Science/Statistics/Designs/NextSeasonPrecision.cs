using LabPipeline.Science.Statistics.Tests;

namespace LabPipeline.Science.Statistics.Designs;

/// <summary>What this season's variation promises for a trial of the same kind with another number of blocks.</summary>
/// <param name="Error">Which error it is: "Residual", "main plot", "Within".</param>
/// <param name="Variance">Variance of one row (plot mean) in that error, squared units of the scale of analysis; above zero.</param>
/// <param name="Df">Degrees of freedom it was estimated with.</param>
public sealed record NextSeasonPrecision(string Error, double Variance, double Df)
{
    /// <summary>
    /// Variance of a plot mean of another number of subsamples: plot variance + sampling variance / subsamples.
    /// More tubers help only until the plot variance rules.
    /// </summary>
    /// <param name="plotVariance">Between plots of one treatment, sampling removed; zero or above.</param>
    /// <param name="samplingVariance">Between subsamples of one plot; zero or above.</param>
    /// <param name="subsamples">Subsamples a plot, 1 or more.</param>
    /// <param name="df">Degrees of freedom between plots.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number outside its range.</exception>
    public static NextSeasonPrecision FromSubsampling(double plotVariance, double samplingVariance, int subsamples, double df)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(plotVariance);
        ArgumentOutOfRangeException.ThrowIfNegative(samplingVariance);
        ArgumentOutOfRangeException.ThrowIfLessThan(subsamples, 1);
        return new NextSeasonPrecision("plot", plotVariance + (samplingVariance / subsamples), df);
    }

    /// <summary>sqrt(2 * Variance / (blocks * rowsPerBlock)): the SED of two means.</summary>
    /// <param name="blocks">Blocks, 2 or more.</param>
    /// <param name="rowsPerBlock">Rows of one mean within a block: 1 for a cell, more for a main effect.</param>
    public double StandardErrorOfDifference(int blocks, int rowsPerBlock = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(blocks, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(rowsPerBlock, 1);
        return Math.Sqrt(2 * Variance / ((double)blocks * rowsPerBlock));
    }

    /// <summary>
    /// The plan of randomised blocks with this variance, which gives power and number of blocks. On a log scale a difference is a
    /// logarithm of a ratio: ln(1.2) for 20 percent.
    /// </summary>
    /// <param name="treatments">Treatments in a block, 2 or more.</param>
    /// <param name="alpha">Level of the test, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number outside its range.</exception>
    public RandomisedBlockPlan Plan(int treatments, double alpha) => new(treatments, Variance, alpha);
}
