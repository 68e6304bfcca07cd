namespace LabPipeline.Quality.Rules;

/// <summary>Samples were measured for the first time after the pull's window: their tubers are older than the plan says.</summary>
public sealed class LatePullRule : IRule<PullEvidence>
{
    public string Name => "late pull";

    public IEnumerable<Finding> Evaluate(PullEvidence evidence)
    {
        var late = evidence.Samples.Where(sample => sample.FirstMeasuredAt is { } first && TrialCalendar.DateOf(first, evidence.Trial.TimeZone) > evidence.ClosesOn).ToList();
        if (late.Count == 0)
        {
            yield break;
        }

        var last = late.Max(sample => TrialCalendar.DateOf(sample.FirstMeasuredAt!.Value, evidence.Trial.TimeZone));
        yield return Findings.Of(
            this, evidence, FindingLevel.Note, "measured late",
            $"{evidence.Title}: {NumberText.Of(late.Count)} of {NumberText.Of(evidence.Samples.Count)} samples were first measured after the window closed on "
                + $"{NumberText.Of(evidence.ClosesOn)}, the last on {NumberText.Of(last)}: {PlotList.ByBay(late)}.",
            "Report the true days in storage for these plots, or check the instrument's clock.",
            new FactSheet().Add("closes", evidence.ClosesOn).Add("last measured", last).Add("plots", PlotList.ByBay(late)).Add("where", PlotList.ByBlock(evidence, late)));
    }
}
