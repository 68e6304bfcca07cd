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
        var negative = agreement.Extracts.Where(extract => Highest(extract) < 0m).ToList();
        if (negative.Count > 0)
        {
            yield return Negative(evidence, agreement, negative, limit);
        }
    }

    private Finding Negative(SampleEvidence evidence, ExtractAgreement agreement, List<ExtractResult> extracts, decimal limit)
    {
        var beyondChance = extracts.Exists(extract => -Highest(extract) > limit);
        var kind = agreement.Repeatability.IsProvisional ? "provisional " : "";
        var facts = new FactSheet();
        extracts.ForEach(extract => facts.Add(extract.Extract.Length == 0 ? "sucrose mg/g" : $"sucrose mg/g, extract {extract.Extract}", Highest(extract)));
        return Findings.Of(
            this, evidence, beyondChance ? FindingLevel.Hold : FindingLevel.Note, "sample",
            $"{evidence.Title}: sucrose is {string.Join(" and ", extracts.Select(extract => NumberText.Of(Highest(extract))))} mg/g, below 0; "
                + $"{(beyondChance ? "beyond" : "within")} the {kind}limit r = {NumberText.Of(limit)} at zero.",
            beyondChance
                ? "Total glucose reads below free glucose by more than chance: check that the two were not swapped and that the invertase worked."
                : "The signed value is kept for means; nothing to do unless it repeats itself across a run.",
            facts.Add("limit r at zero", limit).Add("s_r source", agreement.Repeatability.Source));
    }

    private static decimal Highest(ExtractResult extract) => extract.Content.Raw ?? extract.Content.High;
}
