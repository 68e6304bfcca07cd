namespace LabPipeline.Science.Units;

/// <summary>A value with its standard uncertainty, both in one unit.</summary>
/// <remarks>
/// Combined by the law of propagation of uncertainty, first order, inputs independent: u²(y) = sum (dy/dx)² u²(x). Source: JCGM 100:2008 (GUM), 5.1.2.
/// First order is adequate while every relative uncertainty stays below about 0.1.
/// </remarks>
public readonly record struct UncertainValue
{
    /// <param name="value">The value, finite.</param>
    /// <param name="standardUncertainty">Its standard uncertainty, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or a negative uncertainty.</exception>
    public UncertainValue(double value, double standardUncertainty)
    {
        Value = Require.Finite(value, nameof(value));
        StandardUncertainty = Require.NotNegative(standardUncertainty, nameof(standardUncertainty));
    }

    /// <summary>The value.</summary>
    public double Value { get; }

    /// <summary>Its standard uncertainty.</summary>
    public double StandardUncertainty { get; }

    /// <summary>Expanded uncertainty U = k u; k = 2 covers about 95 % when the value is near normal (GUM 6.2).</summary>
    public double Expanded(double coverageFactor = 2) => Require.Positive(coverageFactor, nameof(coverageFactor)) * StandardUncertainty;

    public static UncertainValue operator +(UncertainValue left, UncertainValue right) =>
        new(left.Value + right.Value, double.Hypot(left.StandardUncertainty, right.StandardUncertainty));

    public static UncertainValue operator -(UncertainValue left, UncertainValue right) =>
        new(left.Value - right.Value, double.Hypot(left.StandardUncertainty, right.StandardUncertainty));

    public static UncertainValue operator *(UncertainValue left, UncertainValue right) =>
        new(left.Value * right.Value, double.Hypot(left.StandardUncertainty * right.Value, right.StandardUncertainty * left.Value));

    /// <exception cref="ArgumentOutOfRangeException">The divisor is zero.</exception>
    public static UncertainValue operator /(UncertainValue left, UncertainValue right)
    {
        if (right.Value == 0)
        {
            throw Require.Out(right.Value, "the divisor", "a number other than zero");
        }

        var quotient = left.Value / right.Value;
        return new(quotient, double.Hypot(left.StandardUncertainty, quotient * right.StandardUncertainty) / Math.Abs(right.Value));
    }
}
