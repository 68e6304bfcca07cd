using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Reading;

/// <summary>One value of one row, read exactly and brought to its canonical unit.</summary>
/// <remarks>
/// Row key, raw value and raw time are passing texts: they hold until the next row is read.
/// <c>Line</c>: line of the file the row begins on, counted from 1.
/// <c>RowKey</c>: tells the row apart within its run; the same for every quantity of the row.
/// <c>Barcode</c>: for samples: upper case, check character verified.
/// <c>Material</c>: for controls the material, for fry batches the batch.
/// <c>Value</c>: in the quantity's canonical unit; when <c>BelowLimit</c>, the limit.
/// <c>BelowLimit</c>: the result lies somewhere below <c>Value</c>: censored, not measured.
/// <c>RawValue</c>: the value as the file writes it, without blanks around it.
/// <c>RawUnit</c>: the unit as the file or its profile writes it.
/// <c>MeasuredAt</c>: instant in UTC.
/// <c>MeasuredAtRaw</c>: the time as the file writes it.
/// </remarks>
public readonly record struct ParsedReading(
    ReadingSubject Subject,
    int Line,
    string Instrument,
    string Run,
    PassingText RowKey,
    Quantity Quantity,
    string? Barcode,
    string? Material,
    decimal Value,
    bool BelowLimit,
    PassingText RawValue,
    string RawUnit,
    string? Extract,
    int? Replicate,
    int? Tuber,
    int? Slice,
    string? Operator,
    DateTimeOffset? MeasuredAt,
    PassingText MeasuredAtRaw)
{
    /// <summary>The same reading with texts of its own.</summary>
    public ParsedReading Kept() => this with { RowKey = RowKey.Kept(), RawValue = RawValue.Kept(), MeasuredAtRaw = MeasuredAtRaw.Kept() };
}
