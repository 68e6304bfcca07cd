using LabPipeline.Intake.Profiles;
using LabPipeline.Science.Barcodes;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Intake.Reading;

/// <summary>Which half of a tuber the files of a profile are measured on, by what they measure.</summary>
/// <remarks>
/// Sugars come from the S half; slices, chips and their colour from the F half. Tubers are weighed and peeled before they are halved, and halves
/// may be weighed after, so those files, and files that mix both sides, take either code.
/// </remarks>
internal static class HalfRule
{
    private static readonly HashSet<Quantity> WeighedOfTheFryHalf = [QuantityCatalogue.SliceMass, QuantityCatalogue.ChipMass];

    /// <returns>Null when codes of both halves may stand in the files.</returns>
    public static TuberHalf? HalfOf(Profile profile)
    {
        var rules = profile.OneValueRows is { } rows ? rows.Map.Values : profile.Quantities;
        var halves = rules.Select(rule => HalfOf(rule.Quantity)).Distinct().ToList();
        return halves is [{ } one] ? one : null;
    }

    private static TuberHalf? HalfOf(Quantity quantity) => quantity.Kind switch
    {
        QuantityKind.Sugar => TuberHalf.Sugar,
        QuantityKind.Colour => TuberHalf.Fry,
        QuantityKind.Bench when quantity != QuantityCatalogue.CleanedSurface => TuberHalf.Fry,
        QuantityKind.Balance when WeighedOfTheFryHalf.Contains(quantity) => TuberHalf.Fry,
        _ => null,
    };
}
