using LabPipeline.Science.Units;

namespace LabPipeline.Science.Gravity;

/// <summary>Losses and yields by weighing, in % of the mass before; both masses in one unit.</summary>
/// <remarks>A loss below zero is a gain and points to a slip at the balance: it is returned as it is, for the quality rules to flag.</remarks>
public static class MassLoss
{
    /// <summary>Peel loss = (before - after) / before x 100.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The mass before is not above zero, or the mass after is negative.</exception>
    public static decimal PeelPercent(decimal massBefore, decimal massAfter) => LossPercent(massBefore, massAfter);

    /// <summary>Storage shrink = (loading - pull) / loading x 100.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The mass at loading is not above zero, or the mass at the pull is negative.</exception>
    public static decimal ShrinkPercent(decimal massAtLoading, decimal massAtPull) => LossPercent(massAtLoading, massAtPull);

    /// <summary>Fry yield = chips / raw slices x 100.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The slice mass is not above zero, or the chip mass is negative.</exception>
    public static decimal FryYieldPercent(decimal sliceMass, decimal chipMass) =>
        Require.NotNegative(chipMass, nameof(chipMass)) / Require.Positive(sliceMass, nameof(sliceMass)) * 100m;

    private static decimal LossPercent(decimal before, decimal after) =>
        (Require.Positive(before, nameof(before)) - Require.NotNegative(after, nameof(after))) / before * 100m;
}
