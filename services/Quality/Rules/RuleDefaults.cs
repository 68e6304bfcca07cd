using LabPipeline.Science.ControlCharts;

namespace LabPipeline.Quality.Rules;

/// <summary>Every number a rule decides by unless the laboratory states its own. docs/specs/quality-rules.md says where each comes from.</summary>
public static class RuleDefaults
{
    /// <summary>Ratios of duplicates that usual dilutions leave behind when one is forgotten (common practice, no source).</summary>
    public static readonly IReadOnlyList<decimal> DilutionFactors = [2m, 4m, 5m, 10m];

    /// <summary>Standard deviations around such a ratio that still look like it: 95 % of slips.</summary>
    public const decimal DilutionReach = 1.96m;

    /// <summary>Widest relative reach at which the factors 4 and 5 stay apart; beyond it no slip is claimed.</summary>
    public const decimal WidestDilutionReach = 0.10m;

    /// <summary>Shift of a weighing session in specific gravity that matters: an untared sling makes 0.004.</summary>
    public const decimal SessionShift = 0.003m;

    /// <summary>Standard errors the shift must exceed, so that plot-to-plot spread alone does not look like one.</summary>
    public const decimal SessionErrors = 3m;

    /// <summary>Fewest samples of a session that have treatment mates in other sessions.</summary>
    public const int SessionSamples = 5;

    /// <summary>Cleaned surface aimed at in %, the usual abrasive peel.</summary>
    public const decimal PeelTargetPercent = 90m;

    /// <summary>Days after its due date on which a pull without any reading is told.</summary>
    public const int PullGraceDays = 1;

    /// <summary>Run rules that put readings in doubt: 0.27 % and 0.10 % false alarms a control (docs/specs/quality-rules.md).</summary>
    public static readonly IReadOnlyList<RunRule> ControlRules = [RunRules.BeyondThree, RunRules.TwoBeyondTwo];

    /// <summary>Run rules that note a drift from run to run, b and c of ISO 7870-2.</summary>
    public static readonly IReadOnlyList<RunRule> TrendRules = [RunRules.SevenOneSide, RunRules.SevenSteady];

    /// <summary>Fewest runs that limits are frozen from.</summary>
    public const int ControlRuns = 20;

    /// <summary>Days after a bench day on which an instrument that sent nothing of it is told.</summary>
    public const int SilentGraceDays = 1;

    /// <summary>Fewest samples of a bench day that make an instrument's silence one matter; fewer are told sample by sample.</summary>
    public const int SilentSamples = 3;

    /// <summary>Minutes an alert may wait on a channel.</summary>
    public const int DeliveryMinutes = 10;

    /// <summary>Minutes a file may wait in a drop folder incomplete or unreadable.</summary>
    public const int HeldFileMinutes = 15;
}
