namespace LabPipeline.Science.Colour;

/// <summary>Which published table the white point of a condition was taken from; they differ in the second decimal, enough to shift b by 0.1.</summary>
public enum WhiteSource
{
    /// <summary>CIE 15:2018, two decimals.</summary>
    Cie15 = 1,

    /// <summary>ASTM E308, three decimals (10° rows from memory); not for D75.</summary>
    AstmE308 = 2,

    /// <summary>The older whites published with the Hunter scale; equal to plain sums at 10 nm.</summary>
    Hunter = 3,

    /// <summary>The perfect diffuser summed with the same weights as the sample.</summary>
    Weights = 4,
}
