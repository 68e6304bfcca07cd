using System.Globalization;
using LabPipeline.Contracts.V1;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Intake.Storing;

/// <summary>Tells the other services what became of a file: barcodes and counts travel, readings stay in the warehouse.</summary>
internal static class IntakeMessages
{
    private const int BarcodesPerMessage = 500;

    public static async Task AddAsync(WarehouseSession session, SourceFile file, FileBarcodes barcodes, DateTimeOffset now)
    {
        var identity = string.Create(CultureInfo.InvariantCulture, $"{file.Sha256}|{file.TakenAt.UtcTicks}");
        if (file.State == FileState.Refused)
        {
            await OutboxStore.AddAsync(session, new FileRefused(file.FileId, file.Name, file.ReasonCode!), identity, now).ConfigureAwait(false);
            return;
        }

        var parts = Math.Max(1, (barcodes.Count + BarcodesPerMessage - 1) / BarcodesPerMessage);
        var part = 0;
        foreach (var touched in barcodes.Rising.Chunk(BarcodesPerMessage).DefaultIfEmpty([]))
        {
            part++;
            var message = new ReadingsRecorded(file.FileId, part, parts, touched, file.NewCount, file.ConflictingCount);
            await OutboxStore.AddAsync(session, message, string.Create(CultureInfo.InvariantCulture, $"{identity}|{part}"), now).ConfigureAwait(false);
        }
    }
}
