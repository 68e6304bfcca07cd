using LabPipeline.Science.ControlCharts;
using LabPipeline.Warehouse.Controls;

namespace LabPipeline.Quality.Rules;

/// <summary>A control drifts from run to run although each run's controls pass; and a control without limits is said to be unjudged.</summary>
public sealed class ControlTrendRule : IRule<ControlChartEvidence>
{
    public string Name => "control chart trend";

    public IEnumerable<Finding> Evaluate(ControlChartEvidence evidence)
    {
        if (evidence.Limits is null)
        {
            yield return Findings.NotEvaluated(
                this, evidence,
                $"no target is stated for it and no limits are frozen, which takes {NumberText.Of(RuleDefaults.ControlRuns)} runs; state one with 'station controls target'");
            yield break;
        }

        if (evidence.Limits is not { Kind: ControlLimitKinds.Frozen, Sigma: { } sigma } || evidence.Openings.Count == 0)
        {
            yield break;
        }

        var z = evidence.Openings.Select(opening => (opening.Point.Value - evidence.Limits.Centre) / sigma).ToList();
        foreach (var rule in RuleDefaults.TrendRules.Where(rule => rule.FiresAt(z, z.Count - 1)))
        {
            yield return Trend(evidence, rule);
        }
    }

    private Finding Trend(ControlChartEvidence evidence, RunRule rule)
    {
        var last = evidence.Openings[^1];
        var unit = evidence.Quantity.Unit;
        return Findings.Of(
            this, evidence, FindingLevel.Note, rule.Name,
            $"{evidence.Title}: {rule.Definition}, up to run {last.Run} with {NumberText.With(last.Point.Value, unit)}; centre {NumberText.With(evidence.Limits!.Centre, unit)} "
                + $"frozen from {NumberText.Of(evidence.Limits.Runs)} runs.",
            "Nothing is out yet. Check calibration, reagent lot and lamp before it is; freeze new limits only when the cause is known and meant.",
            new FactSheet().Add("rule", rule.Name).Add("first run of the pattern", evidence.Openings[^Math.Min(rule.Points, evidence.Openings.Count)].Run));
    }
}
