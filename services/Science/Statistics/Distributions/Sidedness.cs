namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>Which differences count against the hypothesis of no difference.</summary>
public enum Sidedness
{
    /// <summary>A difference in either direction.</summary>
    TwoSided,

    /// <summary>Only a difference upwards: treatment above control.</summary>
    Above,

    /// <summary>Only a difference downwards: treatment below control.</summary>
    Below,
}
