using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Thresholds;

namespace LabPipeline.Quality.Rules;

/// <summary>Less of the surface was peeled clean than the laboratory aims at.</summary>
public sealed class PeelTargetRule(RuleLimits limits) : IRule<SampleEvidence>
{
    public string Name => "peel below target";

    public IEnumerable<Finding> Evaluate(SampleEvidence evidence)
    {
        var target = evidence.Thresholds.Find(QuantityCatalogue.MeanCleanedSurface, ThresholdKinds.Low) ?? limits.PeelTargetPercent;
        foreach (var result in evidence.Computed.Results.Where(result => result.Quantity == QuantityCatalogue.MeanCleanedSurface && result.Value < target))
        {
            yield return Findings.Of(
                this, evidence, FindingLevel.Note, "sample",
                $"{evidence.Title}: cleaned surface is {NumberText.Of(result.Value)} % ({result.Basis}), below the target of {NumberText.Of(target)} %.",
                "Peel longer in smaller batches; remaining peel darkens chips and adds to peel loss spread.",
                new FactSheet().Add("cleaned surface %", result.Value).Add("target %", target));
        }
    }
}
