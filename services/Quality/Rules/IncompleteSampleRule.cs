using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Rules;

/// <summary>The window has closed and a sample that was measured lacks some of what the plan expects, or what its sugars are computed from.</summary>
public sealed class IncompleteSampleRule : IRule<PullEvidence>
{
    private static readonly Quantity[] Concentrations =
        [QuantityCatalogue.GlucoseInExtract, QuantityCatalogue.TotalGlucoseInExtract, QuantityCatalogue.SucroseInExtract];

    public string Name => "incomplete sample";

    public IEnumerable<Finding> Evaluate(PullEvidence evidence)
    {
        if (!evidence.IsClosed)
        {
            yield break;
        }

        var toldForThePull = IncompletePullRule.AbsentFromAll(evidence).Select(expectation => expectation.Quantity).ToHashSet();
        var toldForTheDay = SilentKind.FindAll(evidence).SelectMany(silent => silent.Samples.Select(sample => (sample.Barcode, silent.Kind))).ToHashSet();
        foreach (var sample in evidence.Samples.Where(sample => !sample.HasNothing))
        {
            var gaps = evidence.Expected.Where(expectation => !toldForThePull.Contains(expectation.Quantity))
                .Where(expectation => !toldForTheDay.Contains((sample.Barcode, expectation.Quantity.Kind)))
                .Where(expectation => sample.CountOf(expectation.Quantity.Id) < expectation.Readings)
                .Select(expectation => NumberText.Invariant($"{expectation.Quantity.Name} {sample.CountOf(expectation.Quantity.Id)} of {expectation.Readings}"))
                .Concat(NeededForSugars(sample))
                .ToList();
            if (gaps.Count > 0)
            {
                yield return Gap(evidence, sample, gaps);
            }
        }
    }

    private static IEnumerable<string> NeededForSugars(PullSample sample)
    {
        if (!Concentrations.Any(quantity => Has(sample, quantity)))
        {
            yield break;
        }

        if (!Has(sample, QuantityCatalogue.ExtractFreshMass))
        {
            yield return "no extract_fresh_mass for its sugars";
        }

        if (!Has(sample, QuantityCatalogue.ExtractVolume) && !Has(sample, QuantityCatalogue.SolventVolume))
        {
            yield return "no extract_volume for its sugars";
        }
        else if (!Has(sample, QuantityCatalogue.ExtractVolume) && !(Has(sample, QuantityCatalogue.WeightInAir) && Has(sample, QuantityCatalogue.WeightInWater)))
        {
            yield return "no weights in air and water, which the dry matter in its solvent volume takes";
        }
    }

    private Finding Gap(PullEvidence evidence, PullSample sample, List<string> gaps) =>
        Findings.Of(
            this, evidence, FindingLevel.Hold, "sample",
            $"Sample {sample.Barcode} (plot {sample.PlotCode}, pull {evidence.Subject}) is incomplete after {NumberText.Of(evidence.ClosesOn)}: {NumberText.List(gaps)}.",
            "Look for the files or repeat what can be repeated; otherwise settle this with what was lost.",
            new FactSheet().Add("plot", sample.PlotCode).Add("closes", evidence.ClosesOn).Add("gaps", string.Join(", ", gaps)))
        with
        {
            Subject = sample.Barcode,
            Barcode = sample.Barcode,
        };

    private static bool Has(PullSample sample, Quantity quantity) => sample.CountOf(quantity.Id) > 0;
}
