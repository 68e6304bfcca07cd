namespace LabPipeline.Science.Statistics.Comparisons;

/// <summary>How p values are raised for having made several tests.</summary>
public enum PValueAdjustment
{
    /// <summary>Not at all: every test stands alone.</summary>
    None,

    /// <summary>m p: the chance of any false claim among m tests is at most alpha.</summary>
    Bonferroni,

    /// <summary>The same promise as Bonferroni, stepwise and never weaker (Holm 1979).</summary>
    Holm,

    /// <summary>The expected share of false claims among all claims is at most alpha (Benjamini and Hochberg 1995); for many responses.</summary>
    BenjaminiHochberg,
}
