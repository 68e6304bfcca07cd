namespace LabPipeline.Intake.Reading;

/// <summary>How the reading of a file ended.</summary>
public enum ReadState
{
    /// <summary>Read to its end; parked rows are possible where the profile allows them.</summary>
    Complete,

    /// <summary>The end its profile promises is not there: it may still be written.</summary>
    Held,

    /// <summary>Something in it cannot be read; nothing of it may be stored.</summary>
    Refused,
}
