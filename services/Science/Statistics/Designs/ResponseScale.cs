using System.Globalization;
using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Designs;

/// <summary>The scale on which a response is analysed, stated by the reader and never chosen from the data.</summary>
public abstract class ResponseScale
{
    private ResponseScale(string statement) => Statement = statement;

    /// <summary>The scale in words, for the heading of a table.</summary>
    public string Statement { get; }

    /// <summary>As measured.</summary>
    public static ResponseScale Measured { get; } = new MeasuredScale();

    /// <summary>
    /// x = ln(y + offset). Means come back as geometric means exp(x) - offset, differences as ratios of (y + offset).
    /// </summary>
    /// <param name="offset">Zero or above, in units of the response; zero unless the report states another.</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative offset or one that is not finite.</exception>
    public static ResponseScale Log(double offset = 0) => offset >= 0 && double.IsFinite(offset)
        ? new LogScale(offset)
        : throw new ArgumentOutOfRangeException(nameof(offset), offset, "Expected an offset of zero or above.");

    /// <summary>
    /// x = ln(q / (1 - q)) with q = c + (1 - 2c)p for a share p from 0 to 1. c = 0 admits no share of exactly 0 or 1;
    /// c = 0.5 / (n + 1) is the empirical logit of n tubers. Means come back as shares, differences as odds ratios of q.
    /// Cox 1970 for the empirical logit (from memory).
    /// </summary>
    /// <param name="adjustment">c, from 0 to below 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">An adjustment outside its range.</exception>
    public static ResponseScale Logit(double adjustment = 0) => adjustment is >= 0 and < 0.5
        ? new LogitScale(adjustment)
        : throw new ArgumentOutOfRangeException(nameof(adjustment), adjustment, "Expected an adjustment from 0 to below 0.5.");

    /// <summary>The value on the scale of analysis.</summary>
    /// <exception cref="ArgumentException">A value the scale does not admit, or one that is not finite.</exception>
    public double Transform(double value) => Refusal(value) is { } reason
        ? throw new ArgumentException(reason, nameof(value))
        : Forward(value);

    /// <summary>The mean on the scale of measurement with its interval, the ends carried back one by one.</summary>
    /// <param name="mean">A mean on the scale of analysis.</param>
    /// <param name="alpha">Two-sided; the interval covers 1 - alpha.</param>
    public BackTransformed Mean(LinearEstimate mean, double alpha)
    {
        ArgumentNullException.ThrowIfNull(mean);
        var (low, high) = mean.Interval(alpha);
        return new BackTransformed(MeanName, Back(mean.Estimate), Back(low), Back(high));
    }

    /// <summary>The mean alone, for tables whose means carry no standard error.</summary>
    public double Back(AdjustedMean mean)
    {
        ArgumentNullException.ThrowIfNull(mean);
        return Back(mean.Value ?? throw new NotEstimableException($"The mean of {mean.Label}", mean.NotEstimable ?? "there is none"));
    }

    /// <summary>What a difference of two means is on the scale of measurement: itself, a ratio, or an odds ratio.</summary>
    /// <param name="difference">A difference on the scale of analysis.</param>
    /// <param name="alpha">Two-sided; the interval covers 1 - alpha.</param>
    public BackTransformed Difference(LinearEstimate difference, double alpha)
    {
        ArgumentNullException.ThrowIfNull(difference);
        var (low, high) = difference.Interval(alpha);
        return new BackTransformed(DifferenceName, BackDifference(difference.Estimate), BackDifference(low), BackDifference(high));
    }

    /// <summary>Why the scale does not admit a value; null where it does.</summary>
    internal string? Refusal(double value) => double.IsFinite(value)
        ? RefusalOfFinite(value)
        : $"Found {value}; expected a finite number. Leave out the row of a missing plot.";

    private protected abstract string MeanName { get; }

    private protected abstract string DifferenceName { get; }

    private protected abstract double Forward(double value);

    private protected abstract double Back(double value);

    private protected virtual string? RefusalOfFinite(double value) => null;

    private protected virtual double BackDifference(double value) => Math.Exp(value);

    private sealed class MeasuredScale() : ResponseScale("as measured")
    {
        private protected override string MeanName => "mean";

        private protected override string DifferenceName => "difference";

        private protected override double Forward(double value) => value;

        private protected override double Back(double value) => value;

        private protected override double BackDifference(double value) => value;
    }

    private sealed class LogScale(double offset)
        : ResponseScale(offset == 0 ? "natural logarithm" : string.Create(CultureInfo.InvariantCulture, $"natural logarithm of (value + {offset})"))
    {
        private protected override string MeanName => "geometric mean";

        private protected override string DifferenceName =>
            offset == 0 ? "ratio" : string.Create(CultureInfo.InvariantCulture, $"ratio of (value + {offset})");

        private protected override string? RefusalOfFinite(double value) => value + offset > 0
            ? null
            : string.Create(CultureInfo.InvariantCulture,
                $"Found {value} with offset {offset}; a logarithm needs a sum above 0. State a larger offset, or treat values below the quantitation limit as censored.");

        private protected override double Forward(double value) => Math.Log(value + offset);

        private protected override double Back(double value) => Math.Exp(value) - offset;
    }

    private sealed class LogitScale(double adjustment)
        : ResponseScale(adjustment == 0 ? "logit" : string.Create(CultureInfo.InvariantCulture, $"logit of {adjustment} + {1 - (2 * adjustment)} * share"))
    {
        private protected override string MeanName => "share";

        private protected override string DifferenceName => adjustment == 0 ? "odds ratio" : "odds ratio of the adjusted share";

        private protected override string? RefusalOfFinite(double value) => value is >= 0 and <= 1 && Adjusted(value) is > 0 and < 1
            ? null
            : string.Create(CultureInfo.InvariantCulture,
                $"Found share {value} with adjustment {adjustment}; expected 0 to 1, and an adjustment above 0 where a share is exactly 0 or 1.");

        private protected override double Forward(double value) => Math.Log(Adjusted(value) / (1 - Adjusted(value)));

        private protected override double Back(double value) =>
            Math.Clamp(((1 / (1 + Math.Exp(-value))) - adjustment) / (1 - (2 * adjustment)), 0, 1);

        private double Adjusted(double share) => adjustment + ((1 - (2 * adjustment)) * share);
    }
}
