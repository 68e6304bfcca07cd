using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Results;

/// <summary>One reading in effect, with where it came from.</summary>
public sealed record SampleReading
{
    public long ReadingId { get; init; }

    public string Barcode { get; init; } = "";

    public int QuantityId { get; init; }

    /// <summary>In the quantity's canonical unit; when <see cref="BelowLimit"/>, the limit the reading lies below.</summary>
    public decimal Value { get; init; }

    public bool BelowLimit { get; init; }

    public string RawValue { get; init; } = "";

    public string RawUnit { get; init; } = "";

    public string? Extract { get; init; }

    public int? Replicate { get; init; }

    public int? Tuber { get; init; }

    public int? Slice { get; init; }

    public string Instrument { get; init; } = "";

    public string Run { get; init; } = "";

    public string RowKey { get; init; } = "";

    public DateTimeOffset? MeasuredAt { get; init; }

    public int FileId { get; init; }

    public string FileName { get; init; } = "";

    public int Line { get; init; }

    /// <summary>Whether a control beside it failed.</summary>
    public bool InDoubt { get; init; }

    public Quantity Quantity => QuantityCatalogue.Get(QuantityId);
}
