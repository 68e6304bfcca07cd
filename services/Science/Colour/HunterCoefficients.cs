namespace LabPipeline.Science.Colour;

/// <summary>Coefficients Ka and Kb of the Hunter scale, tabulated and by formula.</summary>
/// <remarks>Source: Hunter and Harold, The Measurement of Appearance; square-root form with the C/2° constants 98.043 and 118.115; sum form from memory.</remarks>
public static class HunterCoefficients
{
    private const double KaOfC = 175;
    private const double KbOfC = 70;

    private static readonly Dictionary<(Illuminant Illuminant, Observer Observer), (double Ka, double Kb)> Table = new()
    {
        [(Illuminant.A, Observer.TwoDegree)] = (185.20, 38.40),
        [(Illuminant.C, Observer.TwoDegree)] = (175.00, 70.00),
        [(Illuminant.D50, Observer.TwoDegree)] = (173.51, 58.48),
        [(Illuminant.D65, Observer.TwoDegree)] = (172.30, 67.20),
        [(Illuminant.D75, Observer.TwoDegree)] = (172.22, 71.30),
        [(Illuminant.A, Observer.TenDegree)] = (186.30, 38.20),
        [(Illuminant.C, Observer.TenDegree)] = (174.30, 69.40),
        [(Illuminant.D50, Observer.TenDegree)] = (173.82, 58.13),
        [(Illuminant.D65, Observer.TenDegree)] = (172.10, 66.70),
        [(Illuminant.D75, Observer.TenDegree)] = (171.76, 70.76),
    };

    /// <summary>Tabulated Ka and Kb.</summary>
    /// <exception cref="ArgumentException">No row for the pair.</exception>
    public static (double Ka, double Kb) Tabulated(Illuminant illuminant, Observer observer) =>
        Table.TryGetValue((illuminant, observer), out var coefficients)
            ? coefficients
            : throw new ArgumentException($"Found {illuminant} and {observer}, expected A, C, D50, D65 or D75 with 2° or 10°.", nameof(illuminant));

    /// <summary>Ka = 175 sqrt(Xn/98.043).</summary>
    public static double SquareRootKa(double xn) => KaOfC * Math.Sqrt(xn / 98.043);

    /// <summary>Kb = 70 sqrt(Zn/118.115).</summary>
    public static double SquareRootKb(double zn) => KbOfC * Math.Sqrt(zn / 118.115);

    /// <summary>Ka = 175/198.04 (Xn + Yn).</summary>
    public static double SumKa(double xn, double yn) => KaOfC / 198.04 * (xn + yn);

    /// <summary>Kb = 70/218.11 (Yn + Zn).</summary>
    public static double SumKb(double yn, double zn) => KbOfC / 218.11 * (yn + zn);
}
