namespace LabPipeline.Quality.Evaluation;

/// <summary>What becomes of an alert.</summary>
public enum AlertChangeKind
{
    /// <summary>Not seen before.</summary>
    Open = 1,

    /// <summary>Told again: it had cleared, was settled on other facts, or got worse.</summary>
    RaiseAgain = 2,

    /// <summary>Still there with other facts or words.</summary>
    Update = 3,

    /// <summary>The cause went away.</summary>
    Clear = 4,
}
