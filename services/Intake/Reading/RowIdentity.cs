using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Reading;

/// <summary>What the readings of one row have in common. One object serves all rows of a file.</summary>
internal sealed class RowIdentity
{
    public ReadingSubject Subject;
    public string Instrument = "";
    public string Run = "";
    public string? Barcode;
    public string? Material;
    public string? Operator;
    public string? Extract;
    public int? Replicate;
    public int? Tuber;
    public int? Slice;
    public DateTimeOffset? MeasuredAt;
    public PassingText MeasuredAtRaw;
    public PassingText RowKey;
}
