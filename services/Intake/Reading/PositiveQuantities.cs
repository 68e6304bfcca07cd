using LabPipeline.Science.Quantities;

namespace LabPipeline.Intake.Reading;

/// <summary>Quantities that cannot be zero or less: masses, volumes and the dilution factor. Results are divided by most of them.</summary>
internal static class PositiveQuantities
{
    public static bool Contain(Quantity quantity) =>
        quantity.Unit == Unit.Gram || quantity.Unit == Unit.Millilitre || quantity == QuantityCatalogue.DilutionFactor;
}
