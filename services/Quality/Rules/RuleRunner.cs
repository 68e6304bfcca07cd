namespace LabPipeline.Quality.Rules;

/// <summary>Runs rules over evidence. A rule that throws becomes a visible finding, and the others still run.</summary>
public static class RuleRunner
{
    public static IReadOnlyList<Finding> Run<TEvidence>(IEnumerable<IRule<TEvidence>> rules, TEvidence evidence)
        where TEvidence : IEvidence => [.. rules.SelectMany(rule => Run(rule, evidence))];

    private static IReadOnlyList<Finding> Run<TEvidence>(IRule<TEvidence> rule, TEvidence evidence)
        where TEvidence : IEvidence
    {
        try
        {
            return [.. rule.Evaluate(evidence)];
        }
        catch (Exception exception)
        {
            return [Findings.NotEvaluated(rule, evidence, exception.Message.TrimEnd('.'))];
        }
    }
}
