using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Warehouse.Facts;

/// <summary>What a person may do to a whole file afterwards. Rows change their standing and the change log says why; nothing is deleted.</summary>
public sealed class FileCorrections
{
    private static readonly SqlText MarkState = SqlText.Load<FileCorrections>("mark-source-file-state");
    private static readonly SqlText ListBarcodes = SqlText.Load<FileCorrections>("list-barcodes-of-file");
    private static readonly SqlText CountContested = SqlText.Load<FileCorrections>("count-contested-of-file");

    private static readonly IReadOnlyList<SqlText> TakeOut =
    [
        SqlText.Load<FileCorrections>("take-out-readings"),
        SqlText.Load<FileCorrections>("take-out-control-checks"),
        SqlText.Load<FileCorrections>("take-out-fry-batches"),
    ];

    private static readonly IReadOnlyList<SqlText> LetContestedIn =
    [
        SqlText.Load<FileCorrections>("let-contested-readings-in"),
        SqlText.Load<FileCorrections>("let-contested-control-checks-in"),
        SqlText.Load<FileCorrections>("let-contested-fry-batches-in"),
    ];

    private static readonly IReadOnlyList<SqlText> Accept =
    [
        SqlText.Load<FileCorrections>("supersede-readings"),
        SqlText.Load<FileCorrections>("accept-readings"),
        SqlText.Load<FileCorrections>("supersede-control-checks"),
        SqlText.Load<FileCorrections>("accept-control-checks"),
        SqlText.Load<FileCorrections>("supersede-fry-batches"),
        SqlText.Load<FileCorrections>("accept-fry-batches"),
    ];

    /// <summary>Takes a file out: its readings no longer count, and values it had kept out take effect.</summary>
    public static async Task TakeOutAsync(WarehouseSession session, SourceFile file, string who, string why, DateTimeOffset now)
    {
        var barcodes = await session.QueryAsync<string>(ListBarcodes, new { fileId = file.FileId }).ConfigureAwait(false);
        foreach (var statement in TakeOut.Concat(LetContestedIn))
        {
            await session.ExecuteAsync(statement, new { fileId = file.FileId }).ConfigureAwait(false);
        }

        await session.ExecuteAsync(MarkState, new { fileId = file.FileId, state = FileState.TakenOut, reason = $"Taken out by {who}: {why}" })
            .ConfigureAwait(false);
        await TellAsync(session, file, "file taken out", barcodes, who, why, now).ConfigureAwait(false);
    }

    /// <summary>Accepts an edited re-export: its contested values take effect, those they contradict are superseded.</summary>
    /// <returns>How many values were contested.</returns>
    public static async Task<int> AcceptAsync(WarehouseSession session, SourceFile file, string who, string why, DateTimeOffset now)
    {
        var contested = await session.ScalarAsync<int>(CountContested, new { fileId = file.FileId }).ConfigureAwait(false);
        if (contested > 0)
        {
            var barcodes = await session.QueryAsync<string>(ListBarcodes, new { fileId = file.FileId }).ConfigureAwait(false);
            foreach (var statement in Accept)
            {
                await session.ExecuteAsync(statement, new { fileId = file.FileId }).ConfigureAwait(false);
            }

            await TellAsync(session, file, "re-export accepted", barcodes, who, why, now).ConfigureAwait(false);
        }

        return contested;
    }

    /// <summary>Accepts single values of an edited re-export by their <see cref="ContestedValue.Key"/>; the rest stay contested.</summary>
    /// <returns>How many took effect.</returns>
    public static async Task<int> AcceptChosenAsync(
        WarehouseSession session, SourceFile file, IReadOnlyCollection<string> keys, string who, string why, DateTimeOffset now)
    {
        var accepted = await ContestedStore.LetInAsync(session, file, keys).ConfigureAwait(false);
        if (accepted > 0)
        {
            var barcodes = await session.QueryAsync<string>(ListBarcodes, new { fileId = file.FileId }).ConfigureAwait(false);
            var what = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{accepted} values of a re-export accepted");
            await TellAsync(session, file, what, barcodes, who, why, now).ConfigureAwait(false);
        }

        return accepted;
    }

    private static async Task TellAsync(
        WarehouseSession session, SourceFile file, string what, IReadOnlyList<string> barcodes, string who, string why, DateTimeOffset now)
    {
        var change = new Change { At = now, Who = who, What = what, Subject = "file:" + file.Sha256, Why = why };
        await ChangeLogStore.AddAsync(session, change).ConfigureAwait(false);

        await ChangedSamples.TellAsync(session, barcodes, $"{what}: {file.Name}", $"{file.Sha256}|{what}", now).ConfigureAwait(false);
    }
}
