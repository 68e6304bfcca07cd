namespace LabPipeline.Quality.Rules;

/// <summary>Samples have readings from before their pull opens: a label of another pull was scanned, or a clock or a date order is wrong.</summary>
public sealed class EarlyMeasurementRule : IRule<PullEvidence>
{
    public string Name => "measured before the pull";

    public IEnumerable<Finding> Evaluate(PullEvidence evidence)
    {
        var early = evidence.Samples.Where(sample => evidence.BenchDayOf(sample) < evidence.OpensOn).ToList();
        if (early.Count == 0)
        {
            yield break;
        }

        var first = early.Min(evidence.BenchDayOf)!.Value;
        yield return Findings.Of(
            this, evidence, FindingLevel.Hold, "measured early",
            $"{evidence.Title} opens on {NumberText.Of(evidence.OpensOn)}, and {NumberText.Of(early.Count)} of its {NumberText.Of(evidence.Samples.Count)} samples "
                + $"have readings from before, the first from {NumberText.Of(first)}: {PlotList.ByBay(early)}.",
            "One sample: a label of this pull was scanned at another; take the reading out there and scan again. A whole session: the instrument's clock or the date order "
                + "of its profile is wrong; correct it and read the file again. Days in storage cannot be trusted until then.",
            new FactSheet().Add("opens", evidence.OpensOn).Add("first measured", first).Add("samples", early.Count).Add("plots", PlotList.ByBay(early)));
    }
}
