namespace LabPipeline.Science.Colour;

/// <summary>Whether a chip exactly on the limit counts as dark.</summary>
public enum DarkLimit
{
    /// <summary>Dark is below the limit; a chip on it is not dark.</summary>
    Below = 1,

    /// <summary>Dark is at or below the limit.</summary>
    AtOrBelow = 2,
}
