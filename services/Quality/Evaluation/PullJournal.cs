using System.Text.Json;
using LabPipeline.Contracts.V1;
using LabPipeline.Warehouse;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Which pulls were touched since a place in the outbox: the outbox is the one ordered record of everything that changed readings.</summary>
internal sealed class PullJournal
{
    private static readonly SqlText FindLast = SqlText.Load<PullJournal>("find-last-outbox-position");
    private static readonly SqlText ListAfter = SqlText.Load<PullJournal>("list-outbox-after");

    private static readonly string[] Types =
        [typeof(ReadingsRecorded).FullName!, typeof(ReadingsChanged).FullName!, typeof(TrialPlanLoaded).FullName!];

    /// <summary>The newest place; 0 when nothing was ever sent.</summary>
    public static Task<long> FindLastAsync(WarehouseSession session) => session.ScalarAsync<long>(FindLast);

    /// <summary>Pulls whose readings changed after <paramref name="position"/>, and trials whose plan was loaded.</summary>
    public static async Task<(IReadOnlyCollection<PullKey> Pulls, IReadOnlySet<string> Trials)> ListTouchedAsync(WarehouseSession session, long position)
    {
        var barcodes = new HashSet<string>(StringComparer.Ordinal);
        var trials = new HashSet<string>(StringComparer.Ordinal);
        foreach (var row in await session.QueryAsync<JournalRow>(ListAfter, new { position, types = Types }).ConfigureAwait(false))
        {
            if (row.Type == typeof(TrialPlanLoaded).FullName)
            {
                trials.Add(JsonSerializer.Deserialize<TrialPlanLoaded>(row.Body)!.TrialCode);
            }
            else
            {
                barcodes.UnionWith(row.Type == typeof(ReadingsRecorded).FullName
                    ? JsonSerializer.Deserialize<ReadingsRecorded>(row.Body)!.SampleBarcodes
                    : JsonSerializer.Deserialize<ReadingsChanged>(row.Body)!.SampleBarcodes);
            }
        }

        return (await TrialStore.ListPullsOfAsync(session, barcodes).ConfigureAwait(false), trials);
    }

    private sealed class JournalRow
    {
        public string Type { get; init; } = "";

        public string Body { get; init; } = "";
    }
}
