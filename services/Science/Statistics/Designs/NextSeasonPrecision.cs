using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Statistics.Designs;

/// <summary>What this season's variation promises for a trial of the same kind with another number of blocks.</summary>
/// <param name="Error">Which error it is: "Residual", "main plot", "Within".</param>
/// <param name="Variance">Variance of one row (plot mean) in that error, squared units of the scale of analysis; above zero.</param>
/// <param name="Df">Degrees of freedom it was estimated with.</param>
public sealed record NextSeasonPrecision(string Error, double Variance, double Df)
{
    private const int MostBlocks = 1000;

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
    /// (t(1 - alpha/2, df) + t(power, df)) * SED: the difference found with the given power; within a few percent of the non-central t.
    /// Cochran and Cox, Experimental Designs, section 2.2 (from memory).
    /// </summary>
    /// <param name="blocks">Blocks, 2 or more.</param>
    /// <param name="errorDf">Error df of the planned trial; (blocks - 1)(treatments - 1) in randomised blocks.</param>
    /// <param name="alpha">Two-sided, above 0, below 1.</param>
    /// <param name="power">Above 0.5, below 1.</param>
    /// <param name="rowsPerBlock">As for <see cref="StandardErrorOfDifference"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number outside its range.</exception>
    public double DetectableDifference(int blocks, double errorDf, double alpha, double power, int rowsPerBlock = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(errorDf, 1);
        if (alpha is not (> 0 and < 1) || power is not (> 0.5 and < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(power), power, $"Found alpha {alpha} and power {power}; expected alpha above 0 and below 1, power above 0.5 and below 1.");
        }

        var t = StudentT.UpperQuantile(alpha / 2, errorDf) + StudentT.Quantile(power, errorDf);
        return t * StandardErrorOfDifference(blocks, rowsPerBlock);
    }

    /// <summary>The smallest number of randomised blocks that finds a difference between two of the treatments.</summary>
    /// <param name="difference">On the scale of analysis, above zero: ln(1.2) for a ratio of 1.2 on a log scale.</param>
    /// <param name="treatments">Treatments in a block, 2 or more.</param>
    /// <param name="alpha">Two-sided.</param>
    /// <param name="power">Above 0.5, below 1.</param>
    /// <exception cref="NotEstimableException">More than 1000 blocks would be needed.</exception>
    public int BlocksNeeded(double difference, int treatments, double alpha, double power)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(difference);
        ArgumentOutOfRangeException.ThrowIfLessThan(treatments, 2);
        for (var blocks = 2; blocks <= MostBlocks; blocks++)
        {
            if (DetectableDifference(blocks, (blocks - 1.0) * (treatments - 1), alpha, power) <= difference)
            {
                return blocks;
            }
        }

        throw new NotEstimableException("The number of blocks", $"more than {MostBlocks} would be needed");
    }
}
