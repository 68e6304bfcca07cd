using LabPipeline.Science.Units;

namespace LabPipeline.Science.Colour;

/// <summary>CIE tristimulus values X, Y, Z on the scale where the perfect diffuser has Y = 100, under a stated condition.</summary>
public sealed record Tristimulus
{
    /// <param name="x">X, zero or more.</param>
    /// <param name="y">Y, zero or more; the luminous reflectance in %.</param>
    /// <param name="z">Z, zero or more.</param>
    /// <param name="condition">What the values are relative to.</param>
    /// <exception cref="ArgumentOutOfRangeException">NaN, infinite or negative: no reflecting sample has it.</exception>
    public Tristimulus(double x, double y, double z, ViewingCondition condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        X = Require.NotNegative(x, nameof(x));
        Y = Require.NotNegative(y, nameof(y));
        Z = Require.NotNegative(z, nameof(z));
        Condition = condition;
    }

    public double X { get; }

    public double Y { get; }

    public double Z { get; }

    public ViewingCondition Condition { get; }

    /// <summary>The same values relative to another white of the same illuminant and observer, such as the CIE table's instead of the sum's.</summary>
    /// <exception cref="ArgumentException">Illuminant or observer differ: only a spectrum can be brought to another one.</exception>
    public Tristimulus RelativeTo(ViewingCondition condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        return condition.Illuminant == Condition.Illuminant && condition.Observer == Condition.Observer
            ? new(X, Y, Z, condition)
            : throw new ArgumentException($"Found values under {Condition} for {condition}, expected the same illuminant and observer.", nameof(condition));
    }
}
