namespace LabPipeline.Science.Colour;

/// <summary>CIE standard colorimetric observers (ISO/CIE 11664-1).</summary>
public enum Observer
{
    /// <summary>CIE 1931, field of 2°.</summary>
    TwoDegree = 2,

    /// <summary>CIE 1964, field of 10°.</summary>
    TenDegree = 10,
}
