using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Thresholds;

namespace LabPipeline.Quality.Rules;

/// <summary>Which thresholds a trial may set of its own.</summary>
public static class ThresholdScope
{
    private static readonly Quantity[] OfFryBatches =
        [QuantityCatalogue.OilStart, QuantityCatalogue.OilLowest, QuantityCatalogue.OilAfter, QuantityCatalogue.FryTime];

    /// <summary>Whether <paramref name="quantity"/> is measured of samples of a trial; what belongs to a fry batch has the window of its method.</summary>
    public static bool IsOfTrial(Quantity quantity) => !OfFryBatches.Contains(quantity);

    /// <summary>Whether a threshold of <paramref name="kind"/> says something about <paramref name="quantity"/>; only weighing sessions are compared as a whole.</summary>
    public static bool Knows(Quantity quantity, string kind) => kind != ThresholdKinds.Shift || quantity == QuantityCatalogue.SpecificGravity;
}
