namespace LabPipeline.Warehouse.Facts;

/// <summary>One value from one line of a file, ready to be stored.</summary>
/// <param name="Subject">What the value speaks about; decides the table.</param>
/// <param name="Line">Line of the file, counted from 1.</param>
/// <param name="Instrument">Instrument that measured it.</param>
/// <param name="Run">Run, session or fry batch on that instrument.</param>
/// <param name="RowKey">Natural key of the row within its run; with the quantity it is counted once for ever.</param>
/// <param name="QuantityId">Stored identifier of the quantity.</param>
/// <param name="Barcode">Sample barcode; set when the subject is a sample.</param>
/// <param name="Material">Control material; set when the subject is a control.</param>
/// <param name="Value">Value in the quantity's canonical unit.</param>
/// <param name="BelowLimit">True when <paramref name="Value"/> is the quantitation limit and the reading lay below it.</param>
/// <param name="RawValue">Text as the instrument wrote it.</param>
/// <param name="RawUnit">Unit as the instrument or its profile states it.</param>
/// <param name="Extract">Extract of the sample.</param>
/// <param name="Replicate">Repeat reading of the same extract or piece.</param>
/// <param name="Tuber">Tuber number within the sample.</param>
/// <param name="Slice">Slice number within the tuber.</param>
/// <param name="Operator">Person at the instrument.</param>
/// <param name="MeasuredAt">Instant of measurement.</param>
/// <param name="MeasuredAs">That instant as the instrument wrote it.</param>
public readonly record struct NewFact(
    FactSubject Subject,
    int Line,
    string Instrument,
    string Run,
    PassingText RowKey,
    int QuantityId,
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
    PassingText MeasuredAs)
{
    /// <summary>The same fact with texts of its own.</summary>
    public NewFact Kept() => this with { RowKey = RowKey.Kept(), RawValue = RawValue.Kept(), MeasuredAs = MeasuredAs.Kept() };

    /// <summary>The same fact with its texts on <paramref name="shelf"/>.</summary>
    public NewFact On(TextShelf shelf) => this with { RowKey = shelf.Keep(RowKey), RawValue = shelf.Keep(RawValue), MeasuredAs = shelf.Keep(MeasuredAs) };
}
