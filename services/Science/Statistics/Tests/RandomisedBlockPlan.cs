using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Statistics.Tests;

/// <summary>Power and number of blocks of a randomised complete block trial, one plot of each treatment in each block.</summary>
/// <remarks>
/// With b blocks the error has (t - 1)(b - 1) degrees of freedom. A planned two-sided comparison of two treatment means that
/// truly differ by d has noncentrality λ = b d² / (2 σ²) on 1 numerator degree of freedom. The overall F on t - 1 is least
/// powerful against a range of d when all other means lie halfway between, which gives the same λ.
/// </remarks>
public sealed class RandomisedBlockPlan
{
    /// <summary>Beyond this the answer is no field trial.</summary>
    private const int MostBlocks = 1000;

    private readonly int _treatments;
    private readonly double _errorVariance;
    private readonly double _alpha;

    /// <param name="treatments">Number of treatments, at least 2.</param>
    /// <param name="errorVariance">σ², the error mean square expected, in the unit of the response squared; above 0.</param>
    /// <param name="alpha">Level of the test, strictly between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is outside its range.</exception>
    public RandomisedBlockPlan(int treatments, double errorVariance, double alpha)
    {
        Require.AtLeast(treatments, 2, "The number of treatments");
        Require.Positive(errorVariance, "The error variance");
        Require.Probability(alpha);
        (_treatments, _errorVariance, _alpha) = (treatments, errorVariance, alpha);
    }

    /// <summary>Probability of finding a true difference between two treatments named beforehand.</summary>
    /// <param name="blocks">Number of blocks, at least 2.</param>
    /// <param name="difference">The true difference, in the unit of the response; not 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is outside its range.</exception>
    public double PowerOfComparison(int blocks, double difference) => Power(blocks, difference, 1);

    /// <summary>Least probability that the overall F test is significant when the largest and smallest treatment means differ by so much.</summary>
    /// <inheritdoc cref="PowerOfComparison" path="/param|/exception"/>
    public double PowerOfOverallF(int blocks, double difference) => Power(blocks, difference, _treatments - 1);

    /// <summary>The fewest blocks that give a planned comparison the wanted power.</summary>
    /// <param name="difference">The true difference to be found, in the unit of the response; not 0.</param>
    /// <param name="power">Wanted probability of finding it, strictly between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is outside its range.</exception>
    /// <exception cref="NotEstimableException">1000 blocks are not enough.</exception>
    public int BlocksForComparison(double difference, double power) => Blocks(difference, power, 1);

    /// <summary>The fewest blocks that give the overall F test the wanted power.</summary>
    /// <inheritdoc cref="BlocksForComparison" path="/param|/exception"/>
    public int BlocksForOverallF(double difference, double power) => Blocks(difference, power, _treatments - 1);

    private double Power(int blocks, double difference, int numeratorDf)
    {
        Require.AtLeast(blocks, 2, "The number of blocks");
        Require.Positive(Math.Abs(difference), "The size of the difference", nameof(difference));
        var errorDf = (_treatments - 1) * (blocks - 1);
        var noncentrality = blocks * difference * difference / (2 * _errorVariance);
        // The mixture is summed up to 1e6; long before that the power is 1 to every digit.
        return NoncentralF.Upper(FDistribution.UpperQuantile(_alpha, numeratorDf, errorDf), numeratorDf, errorDf, Math.Min(noncentrality, 1e5));
    }

    private int Blocks(double difference, double power, int numeratorDf)
    {
        Require.Probability(power);
        var (low, high) = (1, 2);
        while (Power(high, difference, numeratorDf) < power)
        {
            if (high >= MostBlocks)
            {
                throw new NotEstimableException("The number of blocks", Sample.Text($"even {MostBlocks} blocks do not give a power of {power} for a difference of {difference}"));
            }

            (low, high) = (high, Math.Min(2 * high, MostBlocks));
        }

        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = Power(middle, difference, numeratorDf) < power ? (middle, high) : (low, middle);
        }

        return high;
    }
}
