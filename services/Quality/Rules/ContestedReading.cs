using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Rules;

/// <summary>A contested reading beside the one that stands for the same key.</summary>
public sealed record ContestedReading
{
    public string Barcode { get; init; } = "";

    public int QuantityId { get; init; }

    public string Instrument { get; init; } = "";

    public string Run { get; init; } = "";

    public string RowKey { get; init; } = "";

    public string RawValue { get; init; } = "";

    public string RawUnit { get; init; } = "";

    public string FileName { get; init; } = "";

    public string FileSha256 { get; init; } = "";

    public int Line { get; init; }

    /// <summary>The sample that the reading in effect names; a re-export may have moved a row to another sample.</summary>
    public string? StandingBarcode { get; init; }

    /// <summary>The reading that stands; null when it was taken out meanwhile.</summary>
    public string? StandingRawValue { get; init; }

    public string? StandingRawUnit { get; init; }

    public string? StandingFileName { get; init; }

    public int? StandingLine { get; init; }

    public Quantity Quantity => QuantityCatalogue.Get(QuantityId);
}
