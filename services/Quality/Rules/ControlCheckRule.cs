using LabPipeline.Warehouse.Controls;

namespace LabPipeline.Quality.Rules;

/// <summary>A control of a run is out: the readings beside it are in doubt until a good control follows or a person releases them.</summary>
public sealed class ControlCheckRule : IRule<ControlEvidence>
{
    private const int MostShown = 4;

    public string Name => "control check out";

    public IEnumerable<Finding> Evaluate(ControlEvidence evidence)
    {
        var failed = evidence.Failed.ToList();
        if (failed.Count == 0)
        {
            yield break;
        }

        var samples = evidence.Bracketed.Select(reading => reading.Barcode).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        var cause = ControlCause.Of(evidence.Verdicts);
        var facts = new FactSheet();
        failed.ForEach(verdict => facts.Add(NumberText.Invariant($"{verdict.Point.Material} {verdict.Point.Quantity.Name}, line {verdict.Point.Line}"), Against(verdict)));
        yield return Findings.Of(
            this, evidence, FindingLevel.Hold, "controls",
            $"{evidence.Title}: {NumberText.List(failed.ConvertAll(Described), MostShown)}; {Doubted(evidence, samples.Count)}.",
            $"{cause} Measure the readings in doubt again after a good control; or, when they are known to be right, "
                + "release them: station controls release. Until then their results carry the mark 'in doubt'.",
            facts.Add("looks like", cause).Add("readings in doubt", evidence.Bracketed.Count).Add("samples in doubt", NumberText.List(samples, 200)));
    }

    internal static string Described(ControlVerdict verdict)
    {
        var by = verdict.Point.Operator is { Length: > 0 } name ? $" by {name}" : "";
        return NumberText.Invariant($"{verdict.Point.Material} {verdict.Point.Quantity.Name} reads {Against(verdict)}{by} ({verdict.Point.FileName} line {verdict.Point.Line})");
    }

    private static string Against(ControlVerdict verdict) =>
        $"{NumberText.With(verdict.Point.Value, verdict.Point.Quantity.Unit)}, limits {NumberText.Of(verdict.Limits.Lower)} to {NumberText.Of(verdict.Limits.Upper)} "
            + (verdict.Limits.Kind == ControlLimitKinds.Frozen ? $"frozen from {NumberText.Of(verdict.Limits.Runs)} runs, rule {verdict.Failure}" : "(stated target, provisional)");

    private static string Doubted(ControlEvidence evidence, int samples) => evidence.Bracketed.Count == 0
        ? "no readings stand beside it"
        : $"{NumberText.Of(evidence.Bracketed.Count)} readings of {NumberText.Of(samples)} samples are in doubt";
}
