using LabPipeline.Quality.Results;

namespace LabPipeline.Quality.Rules;

/// <summary>Duplicate extracts differ by more than the repeatability limit allows.</summary>
public sealed class DuplicateDisagreementRule : IRule<SampleEvidence>
{
    public string Name => "duplicate disagreement";

    public IEnumerable<Finding> Evaluate(SampleEvidence evidence)
    {
        var slips = DilutionSlip.FindAll(evidence.Computed.Agreements);
        foreach (var agreement in evidence.Computed.Agreements)
        {
            if (agreement.Outcome == AgreementOutcome.NotJudged)
            {
                yield return Findings.NotEvaluated(this, evidence, $"{agreement.Quantity.Name}: {agreement.WhyNot}");
            }
            else if (agreement.Disagrees && !slips.ContainsKey(agreement.Quantity))
            {
                yield return Disagreement(evidence, agreement);
            }
        }
    }

    private Finding Disagreement(SampleEvidence evidence, ExtractAgreement agreement)
    {
        return Findings.Of(
            this, evidence, agreement.Outcome == AgreementOutcome.Median ? FindingLevel.Note : FindingLevel.Hold, agreement.Quantity.Name,
            $"{evidence.Title}: {AgreementText.Results(agreement)} differ by {NumberText.Of(agreement.Range)}; {AgreementText.Limit(agreement)}.",
            Advice(agreement), AgreementText.AddTo(new FactSheet(), agreement).Add(agreement.Quantity.Name + " procedure", EndOf(agreement)));
    }

    private static string Advice(ExtractAgreement agreement) => agreement.Outcome switch
    {
        AgreementOutcome.Open =>
            $"Extract the sample {(agreement.MoreNeeded == 2 ? "twice" : "once")} more while tissue is fresh; until then the "
                + $"{(agreement.Compared == 2 ? "mean" : "median")} stands, marked as open. Never keep the two that agree. "
                + "When no tissue is left, say so: station no-more-extracts.",
        AgreementOutcome.Unresolved =>
            $"No further extract can be made and the procedure has no rule for {NumberText.Of(agreement.Compared)}: their {(agreement.Compared == 2 ? "mean" : "median")} stands, "
                + "marked as unresolved. Settle this with what is known of each extract; set one aside only for a physical reason.",
        _ => $"The procedure has ended and the median of {NumberText.Of(agreement.Compared)} stands. Check mass, volume and dilution of each extract; "
            + "when this repeats itself, check the method.",
    };

    private static string EndOf(ExtractAgreement agreement) => agreement.Outcome switch
    {
        AgreementOutcome.Open => NumberText.Invariant($"{agreement.MoreNeeded} more to extract"),
        AgreementOutcome.Unresolved => "ended without a rule, no more to be had",
        _ => NumberText.Invariant($"ended with the median of {agreement.Compared}"),
    };
}
