namespace LabPipeline.Science.Colour;

/// <summary>Published white points, Yn = 100.</summary>
/// <remarks>Sources: CIE 15:2018; ASTM E308 (2° rows and C/10° seen in public code, the others from memory); whites of the Hunter scale (older constants).</remarks>
internal static class WhitePoints
{
    private static readonly Dictionary<(WhiteSource Source, Illuminant Illuminant, Observer Observer), (double Xn, double Zn)> Table = new()
    {
        [(WhiteSource.Cie15, Illuminant.A, Observer.TwoDegree)] = (109.85, 35.58),
        [(WhiteSource.Cie15, Illuminant.A, Observer.TenDegree)] = (111.14, 35.20),
        [(WhiteSource.Cie15, Illuminant.C, Observer.TwoDegree)] = (98.07, 118.22),
        [(WhiteSource.Cie15, Illuminant.C, Observer.TenDegree)] = (97.29, 116.14),
        [(WhiteSource.Cie15, Illuminant.D50, Observer.TwoDegree)] = (96.42, 82.51),
        [(WhiteSource.Cie15, Illuminant.D50, Observer.TenDegree)] = (96.72, 81.43),
        [(WhiteSource.Cie15, Illuminant.D65, Observer.TwoDegree)] = (95.04, 108.88),
        [(WhiteSource.Cie15, Illuminant.D65, Observer.TenDegree)] = (94.81, 107.32),
        [(WhiteSource.Cie15, Illuminant.D75, Observer.TwoDegree)] = (94.97, 122.61),
        [(WhiteSource.Cie15, Illuminant.D75, Observer.TenDegree)] = (94.42, 120.64),
        [(WhiteSource.AstmE308, Illuminant.A, Observer.TwoDegree)] = (109.850, 35.585),
        [(WhiteSource.AstmE308, Illuminant.A, Observer.TenDegree)] = (111.144, 35.200),
        [(WhiteSource.AstmE308, Illuminant.C, Observer.TwoDegree)] = (98.074, 118.232),
        [(WhiteSource.AstmE308, Illuminant.C, Observer.TenDegree)] = (97.285, 116.145),
        [(WhiteSource.AstmE308, Illuminant.D50, Observer.TwoDegree)] = (96.422, 82.521),
        [(WhiteSource.AstmE308, Illuminant.D50, Observer.TenDegree)] = (96.720, 81.427),
        [(WhiteSource.AstmE308, Illuminant.D65, Observer.TwoDegree)] = (95.047, 108.883),
        [(WhiteSource.AstmE308, Illuminant.D65, Observer.TenDegree)] = (94.811, 107.304),
        [(WhiteSource.Hunter, Illuminant.A, Observer.TwoDegree)] = (109.83, 35.55),
        [(WhiteSource.Hunter, Illuminant.A, Observer.TenDegree)] = (111.16, 35.19),
        [(WhiteSource.Hunter, Illuminant.C, Observer.TwoDegree)] = (98.04, 118.11),
        [(WhiteSource.Hunter, Illuminant.C, Observer.TenDegree)] = (97.30, 116.14),
        [(WhiteSource.Hunter, Illuminant.D50, Observer.TwoDegree)] = (96.38, 82.45),
        [(WhiteSource.Hunter, Illuminant.D50, Observer.TenDegree)] = (96.72, 81.45),
        [(WhiteSource.Hunter, Illuminant.D65, Observer.TwoDegree)] = (95.02, 108.82),
        [(WhiteSource.Hunter, Illuminant.D65, Observer.TenDegree)] = (94.83, 107.38),
        [(WhiteSource.Hunter, Illuminant.D75, Observer.TwoDegree)] = (94.96, 122.53),
        [(WhiteSource.Hunter, Illuminant.D75, Observer.TenDegree)] = (94.45, 120.70),
    };

    public static (double Xn, double Zn) Find(Illuminant illuminant, Observer observer, WhiteSource source) =>
        Table.TryGetValue((source, illuminant, observer), out var white)
            ? white
            : throw new ArgumentException(
                $"Found no white point for {illuminant}, {observer} in {source}, expected one of CIE 15, ASTM E308 (not D75) or the Hunter whites.");
}
