using LabPipeline.Warehouse.Dialects;

namespace LabPipeline.Testing;

/// <summary>Where a <see cref="ScratchWarehouse"/> lies.</summary>
internal interface IScratchStore : IAsyncDisposable
{
    IWarehouseDialect Dialect { get; }
}
