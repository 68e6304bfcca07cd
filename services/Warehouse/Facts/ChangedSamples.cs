using LabPipeline.Contracts.V1;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Warehouse.Facts;

/// <summary>Tells the services that samples must be judged anew because a person decided something about their readings.</summary>
internal static class ChangedSamples
{
    private const int BarcodesPerMessage = 500;

    /// <param name="session">Where the decision is written.</param>
    /// <param name="barcodes">Samples concerned. None is told too: runs and files are judged anew with every message.</param>
    /// <param name="why">What was done, in one line.</param>
    /// <param name="identity">What makes the decision one of its kind.</param>
    /// <param name="now">When it was made.</param>
    public static async Task TellAsync(WarehouseSession session, IReadOnlyCollection<string> barcodes, string why, string identity, DateTimeOffset now)
    {
        IEnumerable<string[]> parts = barcodes.Count == 0 ? [[]] : barcodes.Chunk(BarcodesPerMessage);
        foreach (var part in parts)
        {
            await OutboxStore.AddAsync(session, new ReadingsChanged(part, why), $"{identity}|{now.UtcTicks}|{part.FirstOrDefault()}", now).ConfigureAwait(false);
        }
    }
}
