namespace LabPipeline.Quality.Rules;

/// <summary>Nothing of a pull has been measured although it is due: told while there is time, and as a loss when the window has closed.</summary>
public sealed class MissingPullRule(RuleLimits limits) : IRule<PullEvidence>
{
    public string Name => "missing pull";

    public IEnumerable<Finding> Evaluate(PullEvidence evidence)
    {
        if (evidence.Samples.Count == 0 || evidence.Samples.Any(sample => !sample.HasNothing) || evidence.Today <= evidence.DueOn.AddDays(limits.PullGraceDays))
        {
            yield break;
        }

        var (due, closes, plots) = (NumberText.Of(evidence.DueOn), NumberText.Of(evidence.ClosesOn), NumberText.Of(evidence.Samples.Count));
        var facts = new FactSheet().Add("due", evidence.DueOn).Add("closes", evidence.ClosesOn).Add("samples planned", evidence.Samples.Count)
            .Add("window", evidence.IsClosed ? "closed" : "open");
        yield return evidence.IsClosed
            ? Findings.Of(
                this, evidence, FindingLevel.Block, "whole pull",
                $"{evidence.Title} was due on {due}, its window closed on {closes}, and none of its {plots} samples has a reading: {PlotList.ByBay(evidence.Samples)}.",
                "Find out whether the tubers were pulled and files are missing, or the pull was forgotten; record which. A late pull is a deviation, never a substitute.",
                facts.Add("plots", PlotList.ByBay(evidence.Samples)))
            : Findings.Of(
                this, evidence, FindingLevel.Hold, "whole pull",
                $"{evidence.Title} was due on {due} and none of its {plots} samples has a reading; the window closes on {closes}.",
                $"Pull the tubers now: {PlotList.ByBay(evidence.Samples)}.",
                facts.Add("plots", PlotList.ByBay(evidence.Samples)));
    }
}
