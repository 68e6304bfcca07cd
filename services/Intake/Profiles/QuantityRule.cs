using LabPipeline.Science.Quantities;

namespace LabPipeline.Intake.Profiles;

/// <summary>Where one quantity's value stands and what is accepted.</summary>
/// <remarks>
/// <c>Value</c>: column of the value, or a constant; for the long layout the value column.
/// <c>Unit</c>: declared unit; null when a column or the cell itself states it.
/// <c>UnitText</c>: the unit as the profile spells it; empty when the file states it.
/// <c>UnitColumn</c>: column that states the unit of each value.
/// <c>UnitInCell</c>: whether the unit follows the number in the same cell, after a blank.
/// <c>BelowLimitMarker</c>: what stands before the limit in a result below it, such as &lt;; null when that is not accepted.
/// <c>Lowest</c>: values below, in the canonical unit, refuse the row.
/// <c>Highest</c>: values above, in the canonical unit, refuse the row.
/// <c>MissingAllowed</c>: whether a row may come without this value.
/// </remarks>
public sealed record QuantityRule(
    Quantity Quantity,
    CellSource Value,
    Unit? Unit,
    string UnitText,
    string? UnitColumn,
    bool UnitInCell,
    string? BelowLimitMarker,
    decimal? Lowest,
    decimal? Highest,
    bool MissingAllowed);
