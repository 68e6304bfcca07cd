namespace LabPipeline.Quality.Rules;

/// <summary>Extracts disagree by about a usual dilution factor: says so in place of a plain disagreement.</summary>
public sealed class DilutionSlipRule : IRule<SampleEvidence>
{
    public string Name => "likely dilution slip";

    public IEnumerable<Finding> Evaluate(SampleEvidence evidence)
    {
        foreach (var agreement in evidence.Computed.Agreements)
        {
            if (DilutionSlip.Find(agreement) is not { } slip)
            {
                continue;
            }

            yield return Findings.Of(
                this, evidence, FindingLevel.Hold, agreement.Quantity.Name,
                $"{evidence.Title}: {AgreementText.Results(agreement)} stand {NumberText.Of(slip.Ratio)} to 1, within {NumberText.Of(100m * slip.Tolerance)} % of a dilution by "
                    + $"{NumberText.Of(slip.Factor)}; {AgreementText.Limit(agreement)}.",
                "Look up the dilution of each extract in the bench record; correct the factor and export again, or extract once more. Do not divide by a guess.",
                AgreementText.Facts(agreement).Add("ratio", slip.Ratio).Add("dilution", slip.Factor).Add("tolerance", slip.Tolerance));
        }
    }
}
