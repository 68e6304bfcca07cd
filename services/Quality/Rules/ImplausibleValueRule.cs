using LabPipeline.Quality.Results;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Rules;

/// <summary>A reading or result lies outside the range its quantity usually has.</summary>
/// <remarks>Left to their own rules: specific gravity (weighing), cleaned surface (peel target), sucrose below zero.</remarks>
public sealed class ImplausibleValueRule : IRule<SampleEvidence>
{
    private static readonly Quantity[] JudgedElsewhere = [QuantityCatalogue.SpecificGravity, QuantityCatalogue.MeanCleanedSurface];

    public string Name => "implausible value";

    public IEnumerable<Finding> Evaluate(SampleEvidence evidence) => Readings(evidence).Concat(Results(evidence));

    private IEnumerable<Finding> Readings(SampleEvidence evidence)
    {
        var outside = evidence.Readings.All.Where(reading => !reading.BelowLimit && !reading.Quantity.IsPlausible(reading.Value));
        foreach (var group in outside.GroupBy(reading => reading.QuantityId).OrderBy(group => group.Key))
        {
            var readings = group.ToList();
            var quantity = readings[0].Quantity;
            var places = readings.ConvertAll(Place);
            var facts = new FactSheet();
            readings.ForEach(reading => facts.Add(Place(reading), reading.Value));
            yield return Findings.Of(
                this, evidence, FindingLevel.Note, quantity.Name,
                $"{evidence.Title}: {quantity.Name} {NumberText.With(NumberText.List(readings.ConvertAll(reading => NumberText.Of(reading.Value))), quantity.Unit)} "
                    + $"({NumberText.List(places)}) outside the plausible {Range(quantity)}.",
                "Compare with the bench record and the instrument; set the reading aside with the reason, or settle this when it is right.",
                facts.Add("plausible", Range(quantity)));
        }
    }

    private IEnumerable<Finding> Results(SampleEvidence evidence)
    {
        foreach (var result in evidence.Computed.Results.Where(IsImplausible))
        {
            yield return Findings.Of(
                this, evidence, FindingLevel.Note, result.Quantity.Name,
                $"{evidence.Title}: {result.Quantity.Name} is {NumberText.With(NumberText.Of(result.Value), result.Quantity.Unit)} ({result.Basis}), outside the plausible {Range(result.Quantity)}.",
                "Check what it was computed from: masses, volume, dilution and unit first.",
                new FactSheet().Add(result.Quantity.Name, result.Value).Add("plausible", Range(result.Quantity)).Add("basis", result.Basis));
        }
    }

    private static bool IsImplausible(SampleResult result) =>
        !result.BelowLimit && !result.Quantity.IsPlausible(result.Value) && !JudgedElsewhere.Contains(result.Quantity)
        && !(result.Quantity == QuantityCatalogue.Sucrose && result.Value < 0m);

    private static string Place(SampleReading reading) => NumberText.Invariant($"{reading.FileName} line {reading.Line}");

    private static string Range(Quantity quantity) => NumberText.With($"{NumberText.Of(quantity.Lowest)} to {NumberText.Of(quantity.Highest)}", quantity.Unit);
}
