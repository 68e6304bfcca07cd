namespace LabPipeline.Warehouse.Alerts;

/// <summary>How many alerts of one rule and level are open about one pull, or about no pull.</summary>
public sealed record AlertCount
{
    public string? TrialCode { get; init; }

    public int? PullNo { get; init; }

    public string RuleName { get; init; } = "";

    public string Level { get; init; } = "";

    public int Alerts { get; init; }
}
