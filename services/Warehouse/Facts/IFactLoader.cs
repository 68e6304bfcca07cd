namespace LabPipeline.Warehouse.Facts;

/// <summary>Stores the facts of one file after another, each key once, at the speed of the database.</summary>
public interface IFactLoader : IDisposable
{
    /// <summary>Begins a file. What was added to an earlier one and not completed is forgotten; its caller takes back what was stored of it.</summary>
    void Begin(int fileId);

    void Add(in NewFact fact);

    /// <summary>Finishes the file and tells what became of every fact added.</summary>
    Task<FactCounts> CompleteAsync();

    /// <summary>Barcodes that came with this file; to be asked once it is complete.</summary>
    Task<FileBarcodes> ListBarcodesAsync();

    /// <summary>Those of the barcodes that are in no plan.</summary>
    Task<UnplannedBarcodes> ListUnplannedAsync();
}
