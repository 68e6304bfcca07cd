namespace LabPipeline.Quality.Results;

/// <summary>What a trial decided about its samples before the first reading.</summary>
public sealed record TrialSettings
{
    public string TrialCode { get; init; } = "";

    /// <summary>Zone of the trial's calendar dates, by its IANA name.</summary>
    public string TimeZone { get; init; } = "";

    public int ExtractsPerSample { get; init; }

    /// <summary>Stored name of the relation from specific gravity to dry matter.</summary>
    public string DryMatterRelation { get; init; } = "";

    /// <summary>A chip is dark when its Hunter L is below this; equal is not dark.</summary>
    public decimal DarkBelowHunterL { get; init; }

    /// <summary>A stem-end score is severe from this on.</summary>
    public int SevereFromScore { get; init; }
}
