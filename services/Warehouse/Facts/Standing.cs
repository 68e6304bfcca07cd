namespace LabPipeline.Warehouse.Facts;

/// <summary>Whether a stored fact counts. Facts are never deleted; only this changes, and the change log says who and why.</summary>
public enum Standing
{
    InEffect = 0,

    /// <summary>Arrived later with another value for a key that already has one in effect.</summary>
    Contested = 1,

    /// <summary>Replaced by an accepted re-export.</summary>
    Superseded = 2,

    /// <summary>Set aside by a person with a reason.</summary>
    SetAside = 3,

    /// <summary>Taken out together with its file.</summary>
    TakenOut = 4,
}
