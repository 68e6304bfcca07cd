namespace LabPipeline.Warehouse.Facts;

/// <summary>A value of an edited re-export beside the one that stands for the same row.</summary>
public sealed record ContestedValue
{
    /// <summary>reading, control or fry: in which table it lies.</summary>
    public string Kind { get; init; } = "";

    public long ReadingId { get; init; }

    public int Line { get; init; }

    /// <summary>Barcode, control material or fry batch.</summary>
    public string Subject { get; init; } = "";

    public string Quantity { get; init; } = "";

    public string RawValue { get; init; } = "";

    public string RawUnit { get; init; } = "";

    /// <summary>Null when nothing stands for the row any more.</summary>
    public string? StandingRawValue { get; init; }

    public string? StandingRawUnit { get; init; }

    public string? StandingSubject { get; init; }

    public string? StandingFile { get; init; }

    public int? StandingLine { get; init; }

    /// <summary>Names the value among all of its file.</summary>
    public string Key => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Kind}:{ReadingId}");
}
