namespace LabPipeline.Science.Colour;

/// <summary>Where the coefficients Ka and Kb of a Hunter scale come from. Forms differ by up to 0.3 % in b for daylights: the method states one.</summary>
public enum HunterForm
{
    /// <summary>Ka, Kb and white as tabulated for each illuminant and observer with the Hunter scale.</summary>
    Tabulated = 1,

    /// <summary>Ka = 175 sqrt(Xn/98.043), Kb = 70 sqrt(Zn/118.115), on any white.</summary>
    SquareRoot = 2,

    /// <summary>Ka = 175/198.04 (Xn + Yn), Kb = 70/218.11 (Yn + Zn); 13 % off in b for illuminant A, refused there.</summary>
    Sum = 3,

    /// <summary>Handbook form for C/2°: a = 17.5 (1.02 X - Y)/sqrt(Y), b = 7.0 (Y - 0.847 Z)/sqrt(Y); white does not come out exactly neutral.</summary>
    HandbookC2 = 4,
}
