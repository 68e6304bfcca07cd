using LabPipeline.Quality.Rules;
using LabPipeline.Warehouse.Alerts;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Decides from the alerts of evaluated scopes and the findings about them what opens, changes and clears.</summary>
/// <remarks>
/// The same evidence twice changes nothing. What a person settled stays settled while its facts stay. An alert whose rule could not be
/// evaluated this time is left as it is: not knowing is no reason to clear.
/// </remarks>
public static class Reconciliation
{
    /// <param name="existing">Every alert of the evaluated scopes, whatever its state.</param>
    /// <param name="findings">Every finding of the rules about these scopes.</param>
    public static IReadOnlyList<AlertChange> Decide(IReadOnlyCollection<Alert> existing, IReadOnlyCollection<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(existing);
        ArgumentNullException.ThrowIfNull(findings);
        var byFingerprint = existing.ToDictionary(alert => alert.Fingerprint, StringComparer.Ordinal);
        var found = findings.GroupBy(finding => finding.Fingerprint, StringComparer.Ordinal)
            .OrderBy(group => group.Key, StringComparer.Ordinal)
            .Select(Worst)
            .ToList();
        var unknown = findings.Where(finding => finding.IsNotEvaluated).Select(finding => (finding.Scope, finding.RuleName)).ToHashSet();
        var present = found.Select(finding => finding.Fingerprint).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. found.Select(finding => Compare(byFingerprint.GetValueOrDefault(finding.Fingerprint), finding)).OfType<AlertChange>(),
            .. existing.Where(alert => alert.State == AlertStates.Open && !present.Contains(alert.Fingerprint) && !unknown.Contains((alert.Scope, alert.RuleName)))
                .OrderBy(alert => alert.Fingerprint, StringComparer.Ordinal)
                .Select(alert => new AlertChange(AlertChangeKind.Clear, alert, null)),
        ];
    }

    private static Finding Worst(IEnumerable<Finding> same) =>
        same.OrderByDescending(finding => finding.Level).ThenBy(finding => finding.Headline, StringComparer.Ordinal).First();

    private static AlertChange? Compare(Alert? alert, Finding finding)
    {
        if (alert is null)
        {
            return new AlertChange(AlertChangeKind.Open, null, finding);
        }

        var sameFacts = alert.Facts == finding.Facts.ToJson();
        var kind = alert.State switch
        {
            AlertStates.Cleared => AlertChangeKind.RaiseAgain,
            AlertStates.Settled => sameFacts ? null : AlertChangeKind.RaiseAgain,
            _ when finding.Level > FindingLevels.Read(alert.Level) => AlertChangeKind.RaiseAgain,
            _ => sameFacts && SaysTheSame(alert, finding) ? (AlertChangeKind?)null : AlertChangeKind.Update,
        };
        return kind is { } change ? new AlertChange(change, alert, finding) : null;
    }

    private static bool SaysTheSame(Alert alert, Finding finding) =>
        alert.Level == FindingLevels.TextOf(finding.Level)
        && alert.Headline == AlertText.Fit(finding.Headline)
        && alert.Advice == AlertText.Fit(finding.Advice)
        && alert.Scope == finding.Scope;
}
