namespace LabPipeline.Science.Colour;

/// <summary>CIE illuminants and the light they stand for.</summary>
public enum Illuminant
{
    /// <summary>Incandescent lamp, 2856 K.</summary>
    A = 1,

    /// <summary>Average daylight of the older scales, 6774 K.</summary>
    C = 2,

    /// <summary>Horizon daylight, 5003 K.</summary>
    D50 = 3,

    /// <summary>Noon daylight, 6504 K.</summary>
    D65 = 4,

    /// <summary>North sky daylight, 7504 K.</summary>
    D75 = 5,
}
