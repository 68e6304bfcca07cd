namespace LabPipeline.Reporting.Tracing;

/// <summary>One reading behind a number of a report, with everything that says where it came from.</summary>
public sealed record EvidenceReading
{
    public long ReadingId { get; init; }

    public string Barcode { get; init; } = "";

    public string PlotCode { get; init; } = "";

    public string Quantity { get; init; } = "";

    public string RawValue { get; init; } = "";

    public string RawUnit { get; init; } = "";

    public string? Extract { get; init; }

    public int? Tuber { get; init; }

    public int? Slice { get; init; }

    public int? Replicate { get; init; }

    public string Instrument { get; init; } = "";

    public string Run { get; init; } = "";

    public string? Operator { get; init; }

    public string FileName { get; init; } = "";

    public string FileSha256 { get; init; } = "";

    public int FileLine { get; init; }

    public string? Profile { get; init; }

    public int? ProfileVersion { get; init; }

    public string? Method { get; init; }

    public string Standing { get; init; } = "";
}
