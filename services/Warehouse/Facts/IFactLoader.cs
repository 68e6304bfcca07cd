namespace LabPipeline.Warehouse.Facts;

/// <summary>Stores the facts of one file, each key once, at the speed of the database.</summary>
public interface IFactLoader : IDisposable
{
    void Add(in NewFact fact);

    /// <summary>Finishes the load and tells what became of every fact added.</summary>
    Task<FactCounts> CompleteAsync();
}
