using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Statistics.Tests;

/// <summary>One-way analysis of variance: are the means of several groups of replicate values equal?</summary>
/// <remarks>
/// F = [SSB / (k - 1)] / [SSW / (N - k)] on k - 1 and N - k degrees of freedom, from centred sums in two passes over data
/// shifted by its first value. Checked against the eleven certified NIST StRD sets.
/// </remarks>
/// <param name="Groups">Number of groups, k.</param>
/// <param name="Count">Number of values, N.</param>
/// <param name="SumOfSquaresBetween">Σ nᵢ (mean of group i - grand mean)².</param>
/// <param name="SumOfSquaresWithin">Σ of the squares about the group means.</param>
public sealed record OneWayAnova(int Groups, int Count, double SumOfSquaresBetween, double SumOfSquaresWithin)
{
    public int DfBetween => Groups - 1;

    public int DfWithin => Count - Groups;

    public double MeanSquareBetween => SumOfSquaresBetween / DfBetween;

    public double MeanSquareWithin => SumOfSquaresWithin / DfWithin;

    public double F => MeanSquareBetween / MeanSquareWithin;

    /// <summary>P(F' > F); 0 when it is below the smallest double, about 1e-308.</summary>
    public double P => FDistribution.Upper(F, DfBetween, DfWithin);

    /// <summary>SSB / (SSB + SSW).</summary>
    public double RSquared => SumOfSquaresBetween / (SumOfSquaresBetween + SumOfSquaresWithin);

    /// <summary>√(SSW / (N - k)), in the unit of the values.</summary>
    public double ResidualStandardDeviation => Math.Sqrt(MeanSquareWithin);

    /// <param name="groups">At least two groups, each with at least one value; NaN is refused, not skipped.</param>
    /// <exception cref="ArgumentException">Fewer than two groups, an empty group, or a value that is not finite.</exception>
    /// <exception cref="NotEstimableException">No group has two values, or the values inside every group are equal.</exception>
    public static OneWayAnova Of(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        Sample.CheckGroups(groups, 1);
        var shift = groups[0][0];
        return OfShifted([.. groups.Select(group => group.Select(value => value - shift).ToArray())]);
    }

    /// <summary>The same from decimal values: the shift is exact, so values of 13 or more common leading digits lose none.</summary>
    /// <inheritdoc cref="Of(IReadOnlyList{IReadOnlyList{double}})" path="/param|/exception"/>
    public static OneWayAnova Of(IReadOnlyList<IReadOnlyList<decimal>> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        var first = groups.FirstOrDefault(group => group.Count > 0);
        var shift = first is null ? 0 : first[0];
        var shifted = groups.Select(group => group.Select(value => (double)(value - shift)).ToArray()).ToArray();
        Sample.CheckGroups(shifted, 1);
        return OfShifted(shifted);
    }

    private static OneWayAnova OfShifted(double[][] groups)
    {
        var moments = groups.Select(group => Moments.Of(group)).ToArray();
        var count = moments.Sum(group => group.Count);
        if (count == groups.Length)
        {
            throw new NotEstimableException("F", "every group has 1 value, so there is no error term");
        }

        var total = new CompensatedSum();
        foreach (var group in moments)
        {
            total.Add(group.Count * group.Mean);
        }

        var grand = total.Value / count;
        var (between, within) = (new CompensatedSum(), new CompensatedSum());
        foreach (var group in moments)
        {
            between.Add(group.Count * (group.Mean - grand) * (group.Mean - grand));
            within.Add(group.SumOfSquares);
        }

        return within.Value > 0
            ? new OneWayAnova(groups.Length, count, between.Value, within.Value)
            : throw new NotEstimableException("F", "the values inside every group are equal, so the error variance is 0");
    }
}
