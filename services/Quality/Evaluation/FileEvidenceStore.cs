using LabPipeline.Quality.Rules;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Loads files of the ledger, and files held in drop folders.</summary>
internal sealed class FileEvidenceStore
{
    private const int FilesAtOnce = 400;

    private static readonly SqlText ListFiles = SqlText.Load<FileEvidenceStore>("list-files");
    private static readonly SqlText ListReplaced = SqlText.Load<FileEvidenceStore>("list-replaced-files");
    private static readonly SqlText ListEarlierRefused = SqlText.Load<FileEvidenceStore>("list-earlier-refused-files");
    private static readonly SqlText FindFiles = SqlText.Load<FileEvidenceStore>("find-files-by-sha256");

    public static async Task<IReadOnlyList<FileEvidence>> LoadAsync(WarehouseSession session, IReadOnlyCollection<int> fileIds)
    {
        var files = new List<FileEvidence>();
        foreach (var part in fileIds.Chunk(FilesAtOnce))
        {
            var which = new { fileIds = part };
            var replaced = (await session.QueryAsync<ReplacedRow>(ListReplaced, which).ConfigureAwait(false)).ToDictionary(row => row.FileId, row => row.ReplacedBy);
            foreach (var row in await session.QueryAsync<FileRow>(ListFiles, which).ConfigureAwait(false))
            {
                var unknown = row is { State: FileState.Waiting, FirstReadingId: { } first, LastReadingId: { } last }
                    ? await FileLedgerStore.ListUnplannedAsync(session, row.FileId, first, last).ConfigureAwait(false)
                    : [];
                files.Add(row.Evidence with { ReplacedBy = replaced.GetValueOrDefault(row.FileId), UnknownBarcodes = unknown });
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
    [
        .. (await HeldFileStore.ListAsync(session).ConfigureAwait(false)).Select(file => new HeldFileEvidence
        {
            Folder = file.Folder,
            Name = file.Name,
            ReasonCode = file.ReasonCode,
            Reason = file.Reason,
            FirstSeenAt = file.FirstSeenAt,
            Now = now,
        }),
    ];

    private sealed class FileRow
    {
        public int FileId { get; init; }

        public string Sha256 { get; init; } = "";

        public string Name { get; init; } = "";

        public string Kind { get; init; } = "";

        public string State { get; init; } = "";

        public string? ReasonCode { get; init; }

        public string? Reason { get; init; }

        public long? FirstReadingId { get; init; }

        public long? LastReadingId { get; init; }

        public FileEvidence Evidence => new() { Sha256 = Sha256, Name = Name, Kind = Kind, State = State, ReasonCode = ReasonCode, Reason = Reason };
    }

    private sealed class ReplacedRow
    {
        public int FileId { get; init; }

        public string ReplacedBy { get; init; } = "";
    }
}
