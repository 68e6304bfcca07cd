using System.Globalization;

namespace LabPipeline.Science.Units;

/// <summary>A laboratory result with its quantitation limit: a value, "below limit", or an interval. Never a substituted 0 or blank.</summary>
/// <remarks>
/// A left-censored value in the sense of survival and environmental statistics. The number an instrument gives below the limit is kept in
/// <see cref="Raw"/> with its sign, for means and pooled statistics, but is not reported. All members share one unit, which the holder names.
/// </remarks>
public sealed record LabResult
{
    private LabResult(ResultKind kind, decimal? raw, decimal? limit, decimal low, decimal high)
    {
        Kind = kind;
        Raw = raw;
        Limit = limit;
        Low = low;
        High = high;
    }

    /// <summary>What is known.</summary>
    public ResultKind Kind { get; }

    /// <summary>The number as measured or computed, below the limit or not; null when only a bound or an interval is known.</summary>
    public decimal? Raw { get; }

    /// <summary>The quantitation limit, when there is one.</summary>
    public decimal? Limit { get; }

    /// <summary>The lowest value possible.</summary>
    public decimal Low { get; }

    /// <summary>The highest value possible.</summary>
    public decimal High { get; }

    /// <summary>The reportable value.</summary>
    /// <exception cref="InvalidOperationException">The result is below its limit or an interval.</exception>
    public decimal Value => Kind == ResultKind.Measured
        ? Raw!.Value
        : throw new InvalidOperationException($"Found the result '{this}', expected a value at or above the quantitation limit.");

    /// <summary>A value as measured; below its limit when it is smaller than <paramref name="limit"/> (equal is measured).</summary>
    /// <param name="raw">The number, sign kept.</param>
    /// <param name="limit">The quantitation limit above zero, or null when there is none.</param>
    /// <exception cref="ArgumentOutOfRangeException">The limit is zero or less.</exception>
    public static LabResult Of(decimal raw, decimal? limit = null)
    {
        if (limit is { } bound && raw < Require.Positive(bound, "the quantitation limit"))
        {
            return new LabResult(ResultKind.BelowLimit, raw, bound, Math.Min(raw, 0m), bound);
        }

        return new LabResult(ResultKind.Measured, raw, limit, raw, raw);
    }

    /// <summary>"Less than <paramref name="limit"/>", where the instrument gave no number. The quantity itself cannot be negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The limit is zero or less.</exception>
    public static LabResult Below(decimal limit) => new(ResultKind.BelowLimit, null, Require.Positive(limit, "the quantitation limit"), 0m, limit);

    /// <summary>Known only to lie from <paramref name="low"/> to <paramref name="high"/>.</summary>
    /// <exception cref="ArgumentException">The ends are in the wrong order.</exception>
    public static LabResult Between(decimal low, decimal high) => low <= high
        ? new(ResultKind.Between, null, null, low, high)
        : throw new ArgumentException(FormattableString.Invariant($"Found an interval from {low} to {high}, expected the lower end first."), nameof(low));

    /// <summary>Value, limit and interval multiplied by a factor above zero, such as volume x dilution / mass; the kind stays.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is zero or less.</exception>
    public LabResult Scale(decimal factor)
    {
        Require.Positive(factor, "the factor");
        return new LabResult(Kind, Raw * factor, Limit * factor, Low * factor, High * factor);
    }

    public override string ToString() => Kind switch
    {
        ResultKind.Measured => Raw!.Value.ToString(CultureInfo.InvariantCulture),
        ResultKind.BelowLimit => "<" + Limit!.Value.ToString(CultureInfo.InvariantCulture),
        _ => string.Create(CultureInfo.InvariantCulture, $"{Low} to {High}"),
    };
}
