namespace LabPipeline.Science.Colour;

/// <summary>A Hunter scale: condition, form and coefficients. Values of two scales are never compared or mixed.</summary>
/// <remarks>
/// L = 100 sqrt(Y/Yn), a = Ka (X/Xn - Y/Yn)/sqrt(Y/Yn), b = Kb (Y/Yn - Z/Zn)/sqrt(Y/Yn); Y = 0 is L = a = b = 0.
/// Sources: Hunter and Harold, The Measurement of Appearance, 2nd ed. 1987 (coefficients as carried by public colour tables; sum and handbook forms from memory).
/// </remarks>
public sealed record HunterScale
{
    // 1.02 and 0.847 of the handbook form stand for 100/Xn and 100/Zn.
    private const double HandbookX = 1.02;
    private const double HandbookZ = 0.847;

    private HunterScale(ViewingCondition condition, HunterForm form, double ka, double kb, double xScale, double zScale)
    {
        Condition = condition;
        Form = form;
        Ka = ka;
        Kb = kb;
        XScale = xScale;
        ZScale = zScale;
    }

    public ViewingCondition Condition { get; }

    public HunterForm Form { get; }

    public double Ka { get; }

    public double Kb { get; }

    /// <summary>What X is divided by, as a share: 1/Xn or the handbook's rounded number.</summary>
    internal double XScale { get; }

    internal double ZScale { get; }

    /// <summary>The scale with tabulated white and coefficients.</summary>
    public static HunterScale Tabulated(Illuminant illuminant, Observer observer)
    {
        var condition = ViewingCondition.Of(illuminant, observer, WhiteSource.Hunter);
        var (ka, kb) = HunterCoefficients.Tabulated(illuminant, observer);
        return new(condition, HunterForm.Tabulated, ka, kb, 1 / condition.Xn, 1 / condition.Zn);
    }

    /// <summary>The square-root form on the white of <paramref name="condition"/>.</summary>
    public static HunterScale SquareRoot(ViewingCondition condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        var (ka, kb) = (HunterCoefficients.SquareRootKa(condition.Xn), HunterCoefficients.SquareRootKb(condition.Zn));
        return new(condition, HunterForm.SquareRoot, ka, kb, 1 / condition.Xn, 1 / condition.Zn);
    }

    /// <summary>The sum form on the white of <paramref name="condition"/>.</summary>
    /// <exception cref="ArgumentException">Illuminant A, where the form is 13 % off in b.</exception>
    public static HunterScale Sum(ViewingCondition condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        if (condition.Illuminant == Illuminant.A)
        {
            throw new ArgumentException(
                "Found illuminant A for the sum form of the Hunter scale, expected a daylight: use the tabulated or square-root form.", nameof(condition));
        }

        var (ka, kb) = (HunterCoefficients.SumKa(condition.Xn, condition.Yn), HunterCoefficients.SumKb(condition.Yn, condition.Zn));
        return new(condition, HunterForm.Sum, ka, kb, 1 / condition.Xn, 1 / condition.Zn);
    }

    /// <summary>The rounded handbook form for C/2°.</summary>
    public static HunterScale HandbookC2()
    {
        var condition = ViewingCondition.Of(Illuminant.C, Observer.TwoDegree, WhiteSource.Hunter);
        return new(condition, HunterForm.HandbookC2, 175, 70, HandbookX / 100, HandbookZ / 100);
    }

    public override string ToString() => FormattableString.Invariant($"Hunter {Form} on {Condition}, Ka {Ka:0.###}, Kb {Kb:0.###}");
}
