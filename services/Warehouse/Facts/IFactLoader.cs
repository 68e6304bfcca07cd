namespace LabPipeline.Warehouse.Facts;

/// <summary>Stores the facts of one file, each key once, at the speed of the database.</summary>
public interface IFactLoader : IDisposable
{
    void Add(in NewFact fact);

    /// <summary>Finishes the load and tells what became of every fact added.</summary>
    Task<FactCounts> CompleteAsync();

    /// <summary>Barcodes with readings, new or contested, that came with this file, rising; to be asked once the load is complete.</summary>
    Task<IReadOnlyList<string>> ListBarcodesAsync();

    /// <summary>Those of the barcodes that are in no plan, rising.</summary>
    Task<IReadOnlyList<string>> ListUnplannedAsync();
}
