namespace LabPipeline.Science.Units;

/// <summary>How much is known about a laboratory result.</summary>
public enum ResultKind
{
    /// <summary>A value at or above its limit, or without one.</summary>
    Measured = 1,

    /// <summary>Below the quantitation limit: reported as "below limit", whether or not the instrument gave a number.</summary>
    BelowLimit = 2,

    /// <summary>Known to lie between two values, because something it was computed from was below its limit.</summary>
    Between = 3,
}
