namespace LabPipeline.Quality.Rules;

/// <summary>Findings of rules about evidence.</summary>
public static class Findings
{
    /// <summary>A finding of <paramref name="rule"/> about <paramref name="evidence"/>.</summary>
    public static Finding Of<TEvidence>(
        IRule<TEvidence> rule, TEvidence evidence, FindingLevel level, string window, string headline, string advice, FactSheet facts)
        where TEvidence : IEvidence => new()
        {
            RuleName = rule.Name,
            Level = level,
            Scope = evidence.Scope,
            Subject = evidence.Subject,
            Window = window,
            Headline = headline,
            Advice = advice,
            Facts = facts,
            TrialCode = evidence.TrialCode,
            PullNo = evidence.PullNo,
            Barcode = evidence.Barcode,
        };

    /// <summary>The finding that <paramref name="rule"/> could not be evaluated.</summary>
    public static Finding NotEvaluated<TEvidence>(IRule<TEvidence> rule, TEvidence evidence, string reason)
        where TEvidence : IEvidence => Of(
            rule, evidence, FindingLevel.Note, Finding.NotEvaluatedWindow,
            $"{evidence.Title}: the rule '{rule.Name}' was not evaluated: {reason}.",
            "Nothing is known to be wrong, and nothing was checked; supply what is missing and it is evaluated by itself.",
            new FactSheet().Add("reason", reason));
}
