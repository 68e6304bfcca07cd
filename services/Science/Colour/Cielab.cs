using LabPipeline.Science.Units;

namespace LabPipeline.Science.Colour;

/// <summary>CIE 1976 L*, a*, b* under a stated condition.</summary>
/// <remarks>
/// L* = 116 f(Y/Yn) - 16, a* = 500 (f(X/Xn) - f(Y/Yn)), b* = 200 (f(Y/Yn) - f(Z/Zn)); f(t) = t^(1/3) above (6/29)³, else t/(3 (6/29)²) + 4/29.
/// Source: ISO/CIE 11664-4:2019.
/// </remarks>
public sealed record Cielab
{
    private const double Delta = 6.0 / 29;

    /// <param name="l">Lightness L*, zero or more; 100 is the white.</param>
    /// <param name="a">a*, green to red.</param>
    /// <param name="b">b*, blue to yellow.</param>
    /// <param name="condition">What the values are relative to.</param>
    /// <exception cref="ArgumentOutOfRangeException">NaN, infinite, or L* below zero.</exception>
    public Cielab(double l, double a, double b, ViewingCondition condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        L = Require.NotNegative(l, nameof(l));
        A = Require.Finite(a, nameof(a));
        B = Require.Finite(b, nameof(b));
        Condition = condition;
    }

    public double L { get; }

    public double A { get; }

    public double B { get; }

    public ViewingCondition Condition { get; }

    /// <summary>Chroma C*ab = sqrt(a*² + b*²).</summary>
    public double Chroma => double.Hypot(A, B);

    /// <summary>Hue angle hab in degrees, 0 to below 360; 0 for greys, where it has no meaning.</summary>
    public double HueDegrees => HueOf(A, B);

    /// <summary>From lightness, chroma and hue angle: a* = C cos h, b* = C sin h.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Chroma below zero, or a number not finite.</exception>
    public static Cielab FromPolar(double l, double chroma, double hueDegrees, ViewingCondition condition)
    {
        var (sin, cos) = Math.SinCos(Require.Finite(hueDegrees, nameof(hueDegrees)) * Math.PI / 180);
        return new Cielab(l, Require.NotNegative(chroma, nameof(chroma)) * cos, chroma * sin, condition);
    }

    /// <summary>From X, Y, Z under the same condition.</summary>
    public static Cielab From(Tristimulus xyz)
    {
        ArgumentNullException.ThrowIfNull(xyz);
        var white = xyz.Condition;
        var (fx, fy, fz) = (Compress(xyz.X / white.Xn), Compress(xyz.Y / white.Yn), Compress(xyz.Z / white.Zn));
        // At Y = 0 rounding may leave -1e-15.
        return new Cielab(Math.Max(0, (116 * fy) - 16), 500 * (fx - fy), 200 * (fy - fz), white);
    }

    /// <summary>Back to X, Y, Z.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The colour has a negative tristimulus value: no reflecting sample has it.</exception>
    public Tristimulus ToTristimulus()
    {
        var fy = (L + 16) / 116;
        return new Tristimulus(
            Condition.Xn * Expand(fy + (A / 500)),
            Condition.Yn * Expand(fy),
            Condition.Zn * Expand(fy - (B / 200)),
            Condition);
    }

    internal static double HueOf(double a, double b)
    {
        var degrees = Math.Atan2(b, a) * 180 / Math.PI;
        return degrees < 0 ? degrees + 360 : degrees;
    }

    private static double Compress(double t) => t > Delta * Delta * Delta ? Math.Cbrt(t) : (t / (3 * Delta * Delta)) + (4.0 / 29);

    private static double Expand(double f)
    {
        var t = f > Delta ? f * f * f : 3 * Delta * Delta * (f - (4.0 / 29));
        // Black comes back as a rounding error on either side of zero.
        return Math.Abs(t) < 1e-15 ? 0 : t;
    }
}
