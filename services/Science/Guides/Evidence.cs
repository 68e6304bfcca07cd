namespace LabPipeline.Science.Guides;

/// <summary>How well a guide value is known; shown to people beside the value.</summary>
public enum Evidence
{
    /// <summary>The source text was read.</summary>
    Seen = 1,

    /// <summary>Recalled from the literature, not verified.</summary>
    FromMemory = 2,

    /// <summary>Common practice without a source.</summary>
    CommonPractice = 3,
}
