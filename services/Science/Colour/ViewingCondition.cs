using LabPipeline.Science.Units;

namespace LabPipeline.Science.Colour;

/// <summary>Illuminant, observer and white point: what every colour value is relative to. Values of two conditions are never compared or mixed.</summary>
/// <remarks>White with Yn = 100. Two conditions are equal only when illuminant, observer and all three numbers are.</remarks>
public sealed record ViewingCondition
{
    private ViewingCondition(Illuminant illuminant, Observer observer, WhiteSource whiteSource, double xn, double yn, double zn)
    {
        Illuminant = illuminant;
        Observer = observer;
        WhiteSource = whiteSource;
        Xn = Require.Positive(xn, nameof(xn));
        Yn = Require.Positive(yn, nameof(yn));
        Zn = Require.Positive(zn, nameof(zn));
    }

    public Illuminant Illuminant { get; }

    public Observer Observer { get; }

    /// <summary>Where the white came from.</summary>
    public WhiteSource WhiteSource { get; }

    public double Xn { get; }

    public double Yn { get; }

    public double Zn { get; }

    /// <summary>The condition with a published white point.</summary>
    /// <exception cref="ArgumentException">The table has no such row.</exception>
    public static ViewingCondition Of(Illuminant illuminant, Observer observer, WhiteSource whiteSource = WhiteSource.Cie15)
    {
        var (xn, zn) = WhitePoints.Find(illuminant, observer, whiteSource);
        return new ViewingCondition(illuminant, observer, whiteSource, xn, 100, zn);
    }

    /// <summary>The condition whose white is the perfect diffuser summed with given weights.</summary>
    internal static ViewingCondition Summed(Illuminant illuminant, Observer observer, double xn, double yn, double zn) =>
        new(illuminant, observer, WhiteSource.Weights, xn, yn, zn);

    /// <exception cref="ArgumentException">The conditions differ.</exception>
    internal static void RequireSame(ViewingCondition left, ViewingCondition right)
    {
        if (left != right)
        {
            throw new ArgumentException($"Found colours under {left} and {right}, expected one condition: convert the spectra, not the colour values.");
        }
    }

    public override string ToString() => FormattableString.Invariant(
        $"{Illuminant}/{(int)Observer}° (white {Xn:0.###}, {Yn:0.###}, {Zn:0.###}; {WhiteSource})");
}
