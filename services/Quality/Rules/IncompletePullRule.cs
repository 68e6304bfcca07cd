namespace LabPipeline.Quality.Rules;

/// <summary>The window has closed and plots, or a whole kind of measurement, are missing. One alert for the pull, however many plots.</summary>
public sealed class IncompletePullRule : IRule<PullEvidence>
{
    public string Name => "incomplete pull";

    public IEnumerable<Finding> Evaluate(PullEvidence evidence)
    {
        var present = evidence.Samples.Where(sample => !sample.HasNothing).ToList();
        if (present.Count == 0 || !evidence.IsClosed)
        {
            yield break;
        }

        var absent = evidence.Samples.Where(sample => sample.HasNothing).ToList();
        if (absent.Count > 0)
        {
            yield return Findings.Of(
                this, evidence, FindingLevel.Hold, "plots",
                $"{evidence.Title}, closed on {NumberText.Of(evidence.ClosesOn)}: {NumberText.Of(absent.Count)} of {NumberText.Of(evidence.Samples.Count)} samples "
                    + $"have no reading: {PlotList.ByBay(absent)}.",
                "Look for files that were not dropped and bags that were not pulled; record what is lost, so that the analysis treats the plots as missing.",
                new FactSheet().Add("closes", evidence.ClosesOn).Add("missing", absent.Count).Add("planned", evidence.Samples.Count)
                    .Add("plots", PlotList.ByBay(absent)).Add("where", PlotList.ByBlock(evidence, absent)));
        }

        var quantities = AbsentFromAll(evidence).Select(expectation => expectation.Quantity.Name).ToList();
        if (quantities.Count > 0)
        {
            yield return Findings.Of(
                this, evidence, FindingLevel.Hold, "measurements",
                $"{evidence.Title}, closed on {NumberText.Of(evidence.ClosesOn)}: no sample has {NumberText.List(quantities)}, which the plan expects.",
                "Look for the files of that instrument; correct the plan when the measurement was dropped.",
                new FactSheet().Add("closes", evidence.ClosesOn).Add("measurements", string.Join(", ", quantities)));
        }
    }

    /// <summary>Expected quantities of which the pull has not a single reading: told once, not for each sample.</summary>
    internal static IEnumerable<PullExpectation> AbsentFromAll(PullEvidence evidence) =>
        evidence.Expected.Where(expectation => evidence.Samples.All(sample => sample.CountOf(expectation.Quantity.Id) == 0));
}
