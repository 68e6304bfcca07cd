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
        var open = agreement.Outcome == AgreementOutcome.Open;
        var advice = open
            ? $"Extract the sample {(agreement.MoreNeeded == 2 ? "twice" : "once")} more while tissue is fresh; until then the "
                + $"{(agreement.Compared == 2 ? "mean" : "median")} stands, marked as open. Never keep the two that agree."
            : "The median stands. Check mass, volume and dilution of each extract; when this repeats itself, check the method.";
        return Findings.Of(
            this, evidence, open ? FindingLevel.Hold : FindingLevel.Note, agreement.Quantity.Name,
            $"{evidence.Title}: {AgreementText.Results(agreement)} differ by {NumberText.Of(agreement.Range)}; {AgreementText.Limit(agreement)}.",
            advice, AgreementText.AddTo(new FactSheet(), agreement));
    }
}
