using LabPipeline.Quality.Results;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Rules;

/// <summary>A reading or result lies outside the range its quantity usually has.</summary>
/// <remarks>Left to their own rules: specific gravity (weighing), cleaned surface (peel target), sucrose below zero, what a failed control put in doubt.</remarks>
public sealed class ImplausibleValueRule : IRule<SampleEvidence>
{
    private static readonly Quantity[] JudgedElsewhere = [QuantityCatalogue.SpecificGravity, QuantityCatalogue.MeanCleanedSurface];

    public string Name => "implausible value";

    public IEnumerable<Finding> Evaluate(SampleEvidence evidence) => Readings(evidence).Concat(Results(evidence));

    /// <summary>One finding for a sample and kind of instrument: a chip read over an open port is wrong in all its coordinates.</summary>
    private IEnumerable<Finding> Readings(SampleEvidence evidence) =>
        evidence.Readings.All.Where(reading => !reading.InDoubt && !reading.BelowLimit && !evidence.Thresholds.IsPlausible(reading.Quantity, reading.Value))
            .GroupBy(reading => reading.Quantity.Kind)
            .OrderBy(group => group.Key)
            .Select(group => Outside(
                evidence,
                $"{group.Key} readings".ToLowerInvariant(),
                [.. group.Select(reading => (reading.Quantity, reading.Value, NumberText.Invariant($"{reading.FileName} line {reading.Line}")))],
                "Compare with the bench record and the instrument; set the reading aside with the reason, or settle this when it is right."));

    private IEnumerable<Finding> Results(SampleEvidence evidence)
    {
        var outside = evidence.Computed.Results.Where(result => IsImplausible(result, evidence.Thresholds)).Select(result => (result.Quantity, result.Value, result.Basis)).ToList();
        if (outside.Count > 0)
        {
            yield return Outside(evidence, "results", outside, "Check what it was computed from: masses, volume, dilution and unit first.");
        }
    }

    private Finding Outside(SampleEvidence evidence, string window, List<(Quantity Quantity, decimal Value, string Place)> values, string advice)
    {
        var facts = new FactSheet();
        values.ForEach(value => facts.Add($"{value.Quantity.Name} ({value.Place})", value.Value).Add($"{value.Quantity.Name} plausible", evidence.Thresholds.Range(value.Quantity)));
        var found = values.ConvertAll(value => $"{value.Quantity.Name} {NumberText.With(value.Value, value.Quantity.Unit)} ({value.Place}), plausible {evidence.Thresholds.Range(value.Quantity)}");
        return Findings.Of(this, evidence, FindingLevel.Note, window, $"{evidence.Title}: {NumberText.List(found, 6)}.", advice, facts);
    }

    private static bool IsImplausible(SampleResult result, ThresholdsInForce thresholds) =>
        !result.InDoubt && !result.BelowLimit && !thresholds.IsPlausible(result.Quantity, result.Value) && !JudgedElsewhere.Contains(result.Quantity)
        && !(result.Quantity == QuantityCatalogue.Sucrose && result.Value < 0m);
}
