using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Results;

namespace LabPipeline.Warehouse.Plan;

/// <summary>The laboratory's repeatability of a quantity: s_r = the larger of a constant and a share of the level, in the quantity's unit.</summary>
/// <remarks>
/// <c>Pairs</c>: duplicate pairs it was estimated from; few make it provisional.
/// <c>Source</c>: where the values come from.
/// </remarks>
public sealed record LabRepeatability(Quantity Quantity, decimal Constant, decimal Relative, int Pairs, string Source)
{
    /// <summary>Common practice, no source: below 15 pairs an estimated standard deviation is too uncertain to stand alone.</summary>
    public const int FewestPairs = 15;

    public bool IsProvisional => Pairs < FewestPairs;

    internal bool IsKeptAs(RepeatabilityRow row) =>
        row.QuantityId == Quantity.Id && row.Constant == Constant && row.Relative == Relative && row.Pairs == Pairs && row.Source == Source;

    internal RepeatabilityRow ToRow(DateTimeOffset now, string who) => new()
    {
        QuantityId = Quantity.Id,
        Constant = Constant,
        Relative = Relative,
        Pairs = Pairs,
        Provisional = IsProvisional,
        Source = Source,
        KeptAt = now,
        KeptBy = who,
    };
}
