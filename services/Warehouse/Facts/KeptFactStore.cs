using Dapper;

namespace LabPipeline.Warehouse.Facts;

/// <summary>Streams what is stored of one file, by line and quantity, in memory that does not grow with the file.</summary>
public sealed class KeptFactStore
{
    private static readonly SqlText OfReadings = SqlText.Load<KeptFactStore>("list-facts-of-readings");
    private static readonly SqlText OfControls = SqlText.Load<KeptFactStore>("list-facts-of-controls");
    private static readonly SqlText OfBatches = SqlText.Load<KeptFactStore>("list-facts-of-batches");

    public static IEnumerable<KeptFact> List(WarehouseSession session, SourceFile file, FactSubject subject)
    {
        var text = subject switch
        {
            FactSubject.Sample => OfReadings,
            FactSubject.Control => OfControls,
            _ => OfBatches,
        };
        var parameters = new { fileId = file.FileId, first = file.FirstReadingId ?? 0, last = file.LastReadingId ?? 0 };
        return session.Connection.Query<KeptFact>(text.For(session.Dialect), parameters, session.Transaction, buffered: false);
    }
}
