using LabPipeline.Quality.Results;
using LabPipeline.Science.Quantities;
using LabPipeline.Science.Repeatability;

namespace LabPipeline.Quality.Rules;

/// <summary>Sucrose by inversion came out below zero: by chance near zero, or because two readings were swapped.</summary>
public sealed class NegativeSucroseRule : IRule<SampleEvidence>
{
    public string Name => "negative sucrose";

    public IEnumerable<Finding> Evaluate(SampleEvidence evidence)
    {
        var agreement = evidence.Computed.Agreements.FirstOrDefault(candidate => candidate.Quantity == QuantityCatalogue.Sucrose);
        if (agreement is null)
        {
            yield break;
        }

        var limit = RepeatabilityEstimate.LimitFactor * agreement.Repeatability.SdAt(0m);
        foreach (var extract in agreement.Extracts.Where(extract => CensoredHighest(extract) < 0m))
        {
            yield return Negative(evidence, agreement, extract, limit);
        }
    }

    private Finding Negative(SampleEvidence evidence, ExtractAgreement agreement, ExtractResult extract, decimal limit)
    {
        var value = CensoredHighest(extract);
        var beyondChance = -value > limit;
        var where = extract.Extract.Length == 0 ? "" : $", extract {extract.Extract}";
        var kind = agreement.Repeatability.IsProvisional ? "provisional " : "";
        return Findings.Of(
            this, evidence, beyondChance ? FindingLevel.Hold : FindingLevel.Note, extract.Extract.Length == 0 ? "sample" : "extract " + extract.Extract,
            $"{evidence.Title}{where}: sucrose is {NumberText.Of(value)} mg/g, below 0; "
                + $"{(beyondChance ? "beyond" : "within")} the {kind}limit r = {NumberText.Of(limit)} at zero.",
            beyondChance
                ? "Total glucose reads below free glucose by more than chance: check that the two were not swapped and that the invertase worked."
                : "The signed value is kept for means; nothing to do unless it repeats itself across a run.",
            new FactSheet().Add("sucrose mg/g", value).Add("limit r at zero", limit).Add("s_r source", agreement.Repeatability.Source));
    }

    private static decimal CensoredHighest(ExtractResult extract) => extract.Content.Raw ?? extract.Content.High;
}
