namespace LabPipeline.Quality.Rules;

/// <summary>A reading in effect and its place in the run whose controls vouch for it.</summary>
public sealed record ControlledReading
{
    public long ReadingId { get; init; }

    public string Barcode { get; init; } = "";

    public string? TrialCode { get; init; }

    public int? PullNo { get; init; }

    public int QuantityId { get; init; }

    public string RowKey { get; init; } = "";

    public DateTimeOffset? MeasuredAt { get; init; }

    public int Line { get; init; }
}
