namespace LabPipeline.Quality.Rules;

/// <summary>The limits a laboratory can set for itself (section <c>Quality</c> of the settings). Repeatabilities are kept in the warehouse instead.</summary>
public sealed class RuleLimits
{
    public const string Section = "Quality";

    /// <summary>See <see cref="RuleDefaults.SessionShift"/>.</summary>
    public decimal SessionShift { get; set; } = RuleDefaults.SessionShift;

    /// <summary>See <see cref="RuleDefaults.SessionErrors"/>.</summary>
    public decimal SessionErrors { get; set; } = RuleDefaults.SessionErrors;

    /// <summary>See <see cref="RuleDefaults.SessionSamples"/>.</summary>
    public int SessionSamples { get; set; } = RuleDefaults.SessionSamples;

    /// <summary>See <see cref="RuleDefaults.PeelTargetPercent"/>.</summary>
    public decimal PeelTargetPercent { get; set; } = RuleDefaults.PeelTargetPercent;

    /// <summary>See <see cref="RuleDefaults.PullGraceDays"/>.</summary>
    public int PullGraceDays { get; set; } = RuleDefaults.PullGraceDays;

    /// <summary>See <see cref="RuleDefaults.HeldFileMinutes"/>.</summary>
    public int HeldFileMinutes { get; set; } = RuleDefaults.HeldFileMinutes;

    /// <summary>Whether two disagreeing extracts are followed by two more at once instead of one at a time.</summary>
    public bool TwoMoreExtractsAtOnce { get; set; }
}
