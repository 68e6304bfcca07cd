namespace LabPipeline.Warehouse.Facts;

/// <summary>One reading of a sample with the file and line it came from.</summary>
public sealed record TrailReading
{
    public long ReadingId { get; init; }

    public string Quantity { get; init; } = "";

    public decimal Value { get; init; }

    public string Unit { get; init; } = "";

    public bool BelowLimit { get; init; }

    public string RawValue { get; init; } = "";

    public string RawUnit { get; init; } = "";

    public string? Extract { get; init; }

    public int? Replicate { get; init; }

    public int? Tuber { get; init; }

    public int? Slice { get; init; }

    public string Instrument { get; init; } = "";

    public string Run { get; init; } = "";

    public string? Operator { get; init; }

    public DateTimeOffset? MeasuredAt { get; init; }

    public string FileName { get; init; } = "";

    public string FileSha256 { get; init; } = "";

    public int Line { get; init; }

    public string? Profile { get; init; }

    public int? ProfileVersion { get; init; }

    public string Standing { get; init; } = "";

    /// <summary>The failed control that puts the reading in doubt; null when none does.</summary>
    public string? DoubtCause { get; init; }

    /// <summary>Why it was set aside; null when it was not.</summary>
    public string? ExcludedWhy { get; init; }
}
