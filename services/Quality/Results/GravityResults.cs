using LabPipeline.Science.Gravity;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Results;

/// <summary>Specific gravity by weighing, and the solids that the trial's relation makes of it.</summary>
/// <remarks>The gravity is a / (a - b) as weighed: no relation of the catalogue asks for a water temperature, so none is applied.</remarks>
internal static class GravityResults
{
    public static void Compute(SampleReadings readings, TrialSettings trial, ResultSheet sheet)
    {
        var weighings = Weighing.Read(readings.All);
        foreach (var weighing in weighings.Where(weighing => weighing.WhyNot.Length > 0))
        {
            sheet.Unusable(
                QuantityCatalogue.SpecificGravity, weighing.Where, weighing.WhyNot, "Weigh again with the sling tared, or correct the record and export again.");
        }

        var gravities = weighings.Where(weighing => weighing.SpecificGravity is not null).ToList();
        if (gravities.Count == 0)
        {
            return;
        }

        var values = gravities.ConvertAll(weighing => weighing.SpecificGravity!.Value);
        var sources = gravities.SelectMany(weighing => weighing.FromReadings).ToList();
        sheet.Add(
            QuantityCatalogue.SpecificGravity, values.Average(), values.Count, Spread.Of(values),
            values.Count == 1 ? "one weighing" : $"mean of {values.Count} weighed apart", sources);
        AddSolids(values.Average(), trial, sources, sheet);
    }

    private static void AddSolids(decimal gravity, TrialSettings trial, List<long> sources, ResultSheet sheet)
    {
        var relations = TrialRelations.Find(trial.DryMatterRelation);
        if (relations.Count == 0)
        {
            sheet.Unknown(
                QuantityCatalogue.DryMatter, "", $"is not computed: the trial names the relation '{trial.DryMatterRelation}', expected one of {TrialRelations.Known}",
                "Name one of them in the trial plan and load it again.");
            return;
        }

        if (gravity is < SolidsRelation.LowestSpecificGravity or > SolidsRelation.HighestSpecificGravity)
        {
            sheet.Unknown(
                QuantityCatalogue.DryMatter, "",
                FormattableString.Invariant($"is not computed from specific gravity {gravity:0.0000}, expected {SolidsRelation.LowestSpecificGravity} to ")
                    + FormattableString.Invariant($"{SolidsRelation.HighestSpecificGravity}, the range of the relation"),
                "Check both weights; solids follow when the gravity is right.");
            return;
        }

        foreach (var relation in relations)
        {
            var quantity = relation.Content == Solids.DryMatter ? QuantityCatalogue.DryMatter : QuantityCatalogue.Starch;
            sheet.Add(quantity, relation.Percent(gravity), 1, null, relation.Name, sources);
        }
    }
}
