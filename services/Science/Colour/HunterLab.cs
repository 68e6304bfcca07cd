using LabPipeline.Science.Units;

namespace LabPipeline.Science.Colour;

/// <summary>Hunter L, a, b on a stated scale. Not CIELAB: a medium chip is L 56 where L* is 63.</summary>
public sealed record HunterLab
{
    /// <param name="l">L, zero or more; 100 is the white.</param>
    /// <param name="a">a, green to red.</param>
    /// <param name="b">b, blue to yellow.</param>
    /// <param name="scale">Condition, form and coefficients.</param>
    /// <exception cref="ArgumentOutOfRangeException">NaN, infinite, or L below zero.</exception>
    public HunterLab(double l, double a, double b, HunterScale scale)
    {
        ArgumentNullException.ThrowIfNull(scale);
        L = Require.NotNegative(l, nameof(l));
        A = Require.Finite(a, nameof(a));
        B = Require.Finite(b, nameof(b));
        Scale = scale;
    }

    public double L { get; }

    public double A { get; }

    public double B { get; }

    public HunterScale Scale { get; }

    /// <summary>From X, Y, Z measured under the illuminant and observer of the scale.</summary>
    /// <exception cref="ArgumentException">Illuminant or observer of the values is not that of the scale.</exception>
    public static HunterLab From(Tristimulus xyz, HunterScale scale)
    {
        ArgumentNullException.ThrowIfNull(xyz);
        ArgumentNullException.ThrowIfNull(scale);
        RequireSameLight(xyz.Condition, scale.Condition);
        var y = xyz.Y / scale.Condition.Yn;
        if (y == 0)
        {
            return new HunterLab(0, 0, 0, scale);
        }

        var root = Math.Sqrt(y);
        return new HunterLab(
            100 * root,
            scale.Ka * ((xyz.X * scale.XScale) - y) / root,
            scale.Kb * (y - (xyz.Z * scale.ZScale)) / root,
            scale);
    }

    /// <summary>Back to X, Y, Z under the condition of the scale.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The colour has a negative tristimulus value, or L is 0 with a colour.</exception>
    public Tristimulus ToTristimulus()
    {
        if (L == 0 && (A != 0 || B != 0))
        {
            throw Require.Out(L, "L", "above zero where a or b is not zero");
        }

        var root = L / 100;
        var y = root * root;
        return new Tristimulus(
            Settle((A * root / Scale.Ka) + y) / Scale.XScale,
            y * Scale.Condition.Yn,
            Settle(y - (B * root / Scale.Kb)) / Scale.ZScale,
            Scale.Condition);
    }

    /// <summary>L - L, a - a, b - b on one scale.</summary>
    /// <exception cref="ArgumentException">The scales differ.</exception>
    public static (double DeltaL, double DeltaA, double DeltaB) Difference(HunterLab reference, HunterLab sample)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(sample);
        return reference.Scale == sample.Scale
            ? (sample.L - reference.L, sample.A - reference.A, sample.B - reference.B)
            : throw new ArgumentException($"Found colours on {reference.Scale} and {sample.Scale}, expected one scale.", nameof(sample));
    }

    // The white itself is part of the scale here: X, Y, Z are divided by the scale's white, whatever white their own condition names.
    private static void RequireSameLight(ViewingCondition values, ViewingCondition scale)
    {
        if (values.Illuminant != scale.Illuminant || values.Observer != scale.Observer)
        {
            throw new ArgumentException($"Found tristimulus values under {values} for a scale on {scale}, expected the same illuminant and observer.");
        }
    }

    // A value that is zero comes back as a rounding error on either side of it.
    private static double Settle(double share) => Math.Abs(share) < 1e-15 ? 0 : share;
}
