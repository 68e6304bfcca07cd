namespace LabPipeline.Intake.Reading;

/// <summary>What reading a file gave, besides the readings themselves.</summary>
/// <remarks>
/// <c>Rows</c>: data rows met, good or not.
/// <c>Readings</c>: readings of samples handed to the sink.
/// <c>ControlReadings</c>: readings of control materials handed to the sink.
/// <c>FryBatchReadings</c>: readings of fry batches handed to the sink.
/// <c>MissingValues</c>: how often each text stood for "no value".
/// <c>ParkedRows</c>: the first parked rows; <c>ParkedRowCount</c> counts all.
/// <c>Faults</c>: the first faults; <c>FaultCount</c> counts all.
/// <c>IgnoredColumns</c>: columns of the file that were left unread.
/// </remarks>
public sealed record ReadOutcome(
    string FileName,
    ReadState State,
    long Rows,
    long Readings,
    long ControlReadings,
    long FryBatchReadings,
    IReadOnlyDictionary<string, long> MissingValues,
    long ParkedRowCount,
    IReadOnlyList<ParkedRow> ParkedRows,
    long FaultCount,
    IReadOnlyList<Fault> Faults,
    IReadOnlyList<string> IgnoredColumns);
