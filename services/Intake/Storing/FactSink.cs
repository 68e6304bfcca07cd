using LabPipeline.Intake.Reading;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Storing;

/// <summary>Hands parsed readings to the warehouse's loader while the file is being read.</summary>
internal sealed class FactSink(IFactLoader loader) : IReadingSink
{
    public void Take(in ParsedReading reading) => loader.Add(FactOf(reading));

    internal static NewFact FactOf(in ParsedReading reading) => new(
        SubjectOf(reading.Subject),
        reading.Line,
        reading.Instrument,
        reading.Run,
        reading.RowKey,
        reading.Quantity.Id,
        reading.Barcode,
        reading.Material,
        reading.Value,
        reading.BelowLimit,
        reading.RawValue,
        reading.RawUnit,
        reading.Extract,
        reading.Replicate,
        reading.Tuber,
        reading.Slice,
        reading.Operator,
        reading.MeasuredAt,
        reading.MeasuredAtRaw);

    private static FactSubject SubjectOf(ReadingSubject subject) => subject switch
    {
        ReadingSubject.Sample => FactSubject.Sample,
        ReadingSubject.Control => FactSubject.Control,
        _ => FactSubject.FryBatch,
    };
}
