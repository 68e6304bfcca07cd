using LabPipeline.Quality.Rules;
using LabPipeline.Warehouse;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Loads files of the ledger, and files held in drop folders.</summary>
internal sealed class FileEvidenceStore
{
    private const int FilesAtOnce = 400;

    private static readonly SqlText ListFiles = SqlText.Load<FileEvidenceStore>("list-files");
    private static readonly SqlText ListReplaced = SqlText.Load<FileEvidenceStore>("list-replaced-files");
    private static readonly SqlText ListUnknown = SqlText.Load<FileEvidenceStore>("list-unknown-barcodes");
    private static readonly SqlText ListEarlierRefused = SqlText.Load<FileEvidenceStore>("list-earlier-refused-files");
    private static readonly SqlText FindFiles = SqlText.Load<FileEvidenceStore>("find-files-by-sha256");
    private static readonly SqlText ListHeld = SqlText.Load<FileEvidenceStore>("list-held-files");

    public static async Task<IReadOnlyList<FileEvidence>> LoadAsync(WarehouseSession session, IReadOnlyCollection<int> fileIds)
    {
        var files = new List<FileEvidence>();
        foreach (var part in fileIds.Chunk(FilesAtOnce))
        {
            var which = new { fileIds = part };
            var replaced = (await session.QueryAsync<ReplacedRow>(ListReplaced, which).ConfigureAwait(false)).ToDictionary(row => row.FileId, row => row.ReplacedBy);
            foreach (var file in await session.QueryAsync<FileEvidence>(ListFiles, which).ConfigureAwait(false))
            {
                var unknown = file.State == FileEvidence.Waiting ? await session.QueryAsync<string>(ListUnknown, new { file.FileId }).ConfigureAwait(false) : [];
                files.Add(file with { ReplacedBy = replaced.GetValueOrDefault(file.FileId), UnknownBarcodes = unknown });
            }
        }

        return files;
    }

    /// <summary>Refused files that came earlier under the same name into the same folder.</summary>
    public static Task<IReadOnlyList<int>> ListEarlierRefusedAsync(WarehouseSession session, int fileId) =>
        session.QueryAsync<int>(ListEarlierRefused, new { fileId });

    public static Task<IReadOnlyList<int>> FindAsync(WarehouseSession session, IReadOnlyCollection<string> sha256) =>
        session.QueryAsync<int>(FindFiles, new { sha256 });

    public static async Task<IReadOnlyList<HeldFileEvidence>> ListHeldAsync(WarehouseSession session, DateTimeOffset now) =>
        [.. (await session.QueryAsync<HeldFileEvidence>(ListHeld).ConfigureAwait(false)).Select(file => file with { Now = now })];

    private sealed class ReplacedRow
    {
        public int FileId { get; init; }

        public string ReplacedBy { get; init; } = "";
    }
}
