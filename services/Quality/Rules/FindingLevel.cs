namespace LabPipeline.Quality.Rules;

/// <summary>How much a finding stops; a higher number stops more.</summary>
public enum FindingLevel
{
    /// <summary>Worth knowing; nothing stops.</summary>
    Note = 1,

    /// <summary>A person must decide before the value is used.</summary>
    Hold = 2,

    /// <summary>The value cannot be used.</summary>
    Block = 3,
}
