namespace LabPipeline.Quality.Rules;

/// <summary>Extracts disagree by about a usual dilution factor: says so, once for the sample, in place of plain disagreements.</summary>
public sealed class DilutionSlipRule : IRule<SampleEvidence>
{
    public string Name => "likely dilution slip";

    public IEnumerable<Finding> Evaluate(SampleEvidence evidence) =>
        DilutionSlip.FindAll(evidence.Computed.Agreements).Values.GroupBy(slip => slip.Factor).Select(slips => Slip(evidence, [.. slips]));

    private Finding Slip(SampleEvidence evidence, List<DilutionSlip> slips)
    {
        var factor = NumberText.Of(slips[0].Factor);
        var facts = new FactSheet().Add("dilution", factor);
        foreach (var slip in slips)
        {
            AgreementText.AddTo(facts, slip.Agreement);
            facts.Add(slip.Agreement.Quantity.Name + " ratio", slip.Ratio).Add(slip.Agreement.Quantity.Name + " reach around the dilution", slip.Tolerance);
        }

        var found = slips.ConvertAll(slip =>
            $"{AgreementText.Results(slip.Agreement)} stand {NumberText.Of(slip.Ratio)} to 1, within {NumberText.Of(100m * slip.Tolerance)} % of {factor}, {AgreementText.Limit(slip.Agreement)}");
        return Findings.Of(
            this, evidence, FindingLevel.Hold, "dilution by " + factor,
            $"{evidence.Title} looks as if a dilution by {factor} was forgotten or entered twice: {string.Join("; ", found)}.",
            "Look up the dilution of each extract in the bench record; correct the factor and export again, or extract once more. Do not divide by a guess.",
            facts);
    }
}
