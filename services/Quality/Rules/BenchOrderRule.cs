
namespace LabPipeline.Quality.Rules;

/// <summary>Samples were reported in another order than the one drawn: a rack shifted, a tray rotated, samples exchanged.</summary>
public sealed class BenchOrderRule : IRule<OrderEvidence>
{
    private const int MostShown = 4;

    public string Name => "bench order mismatch";

    public IEnumerable<Finding> Evaluate(OrderEvidence evidence)
    {
        if (evidence.Verdict.IsInOrder)
        {
            yield break;
        }

        var findings = evidence.Verdict.Findings;
        var facts = new FactSheet().Add("work", evidence.Work);
        foreach (var finding in findings)
        {
            facts.Add(NumberText.Invariant($"place {finding.FirstPlace}"), finding.Explanation);
        }

        yield return Findings.Of(
            this, evidence, FindingLevel.Hold, evidence.Work,
            $"{evidence.Title} does not follow the {evidence.Work} order of pull {evidence.Trial}/{NumberText.Of(evidence.Pull)}. {string.Join(" ", findings.Take(MostShown).Select(finding => finding.Explanation))}"
                + (findings.Count > MostShown ? NumberText.Invariant($" And {findings.Count - MostShown} more.") : ""),
            "Compare rack and labels with the printed order before anything is thrown away. Labels right: settle this, the order alone was changed. "
                + "Labels wrong: take the file out and measure again; never move values from one sample to another by a guess.",
            facts);
    }
}
