namespace LabPipeline.Intake.Folders;

/// <summary>The three verdicts about a file in a drop folder.</summary>
public enum ReadinessState
{
    /// <summary>Complete by its profile's rule: take it.</summary>
    Ready,

    /// <summary>Seen too shortly to tell: look again soon, nothing to report.</summary>
    Settling,

    /// <summary>Cannot be taken as it is; stays where it lies and is shown with the reason.</summary>
    Held,
}
