using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Rules;

/// <summary>One measurement of a control material in effect.</summary>
public sealed record ControlPoint
{
    public string RowKey { get; init; } = "";

    public int QuantityId { get; init; }

    public string Material { get; init; } = "";

    public decimal Value { get; init; }

    public DateTimeOffset? MeasuredAt { get; init; }

    public string? Operator { get; init; }

    public string FileName { get; init; } = "";

    public int Line { get; init; }

    public Quantity Quantity => QuantityCatalogue.Get(QuantityId);

    /// <summary>What makes it this very measurement with this very value.</summary>
    public string Identity => NumberText.Invariant($"{Material}|{Quantity.Name}|{RowKey}|{Value:0.############}");
}
