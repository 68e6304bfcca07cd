using System.Text.Json;
using LabPipeline.Quality.Rules;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Controls;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Loads runs with their controls, the limits in force, and the readings beside failed ones; keeps which readings are in doubt.</summary>
public sealed class ControlEvidenceStore
{
    private const int AtOnce = 400;

    private static readonly SqlText ListRuns = SqlText.Load<ControlEvidenceStore>("list-control-runs");
    private static readonly SqlText ListRunsOfFile = SqlText.Load<ControlEvidenceStore>("list-control-runs-of-file");
    private static readonly SqlText FindRunName = SqlText.Load<ControlEvidenceStore>("find-run-name");
    private static readonly SqlText ListPoints = SqlText.Load<ControlEvidenceStore>("list-control-points");
    private static readonly SqlText ListReadings = SqlText.Load<ControlEvidenceStore>("list-controlled-readings");

    /// <summary>Runs with controls that measured <paramref name="barcodes"/>, and those whose controls a file holds.</summary>
    /// <param name="session">Where to read.</param>
    /// <param name="barcodes">Touched samples.</param>
    /// <param name="fileId">Only when this file holds their readings; null for any file.</param>
    internal static async Task<IReadOnlySet<int>> ListRunsAsync(WarehouseSession session, IReadOnlyCollection<string> barcodes, int? fileId)
    {
        var runs = new HashSet<int>();
        foreach (var part in barcodes.Chunk(AtOnce))
        {
            runs.UnionWith(await session.QueryAsync<int>(ListRuns, new { barcodes = part, fileId }).ConfigureAwait(false));
        }

        if (fileId is not null)
        {
            runs.UnionWith(await session.QueryAsync<int>(ListRunsOfFile, new { fileId }).ConfigureAwait(false));
        }

        return runs;
    }

    internal static async Task<ControlLimitBook> LoadLimitsAsync(WarehouseSession session) =>
        new(await ControlLimitStore.ListAsync(session).ConfigureAwait(false));

    /// <summary>The controls of a run by its names; null when there is none.</summary>
    public static async Task<ControlEvidence?> FindAsync(WarehouseSession session, string instrument, string run)
    {
        var limits = await LoadLimitsAsync(session).ConfigureAwait(false);
        var ids = await RunEvidenceStore.FindRunsAsync(session, [instrument + "/" + run]).ConfigureAwait(false);
        foreach (var id in ids)
        {
            if (await LoadAsync(session, id, limits).ConfigureAwait(false) is { } evidence && evidence.Instrument == instrument && evidence.Run == run)
            {
                return evidence;
            }
        }

        return null;
    }

    /// <summary>The controls of a run; null when it has no run of this number.</summary>
    /// <remarks>Readings are loaded only where a control failed: a run that passes costs its controls, however long it is.</remarks>
    public static async Task<ControlEvidence?> LoadAsync(WarehouseSession session, int runId, ControlLimitBook limits)
    {
        if (await session.FirstOrDefaultAsync<RunName>(FindRunName, new { runId }).ConfigureAwait(false) is not { } run)
        {
            return null;
        }

        var points = await ListPointsAsync(session, runId).ConfigureAwait(false);
        var verdicts = ControlReview.Judge(run.Instrument, points, limits);
        var quantities = verdicts.Where(verdict => !verdict.Passed).Select(verdict => verdict.Point.QuantityId).Distinct().ToList();
        IReadOnlyList<ControlledReading> readings = quantities.Count == 0
            ? []
            : await session.QueryAsync<ControlledReading>(ListReadings, new { runId, quantities }).ConfigureAwait(false);
        var bracketed = ControlReview.InDoubt(verdicts, readings, new HashSet<string>());
        return new ControlEvidence
        {
            Instrument = run.Instrument,
            Run = run.Run,
            Points = points,
            Verdicts = verdicts,
            Readings = readings,
            Bracketed = [.. bracketed.Select(entry => entry.Reading)],
        };
    }

    /// <summary>Writes down which readings of a run are in doubt now.</summary>
    /// <returns>Samples whose readings came into doubt or out of it.</returns>
    internal static async Task<IReadOnlySet<string>> KeepDoubtsAsync(WarehouseSession session, int runId, ControlEvidence evidence)
    {
        var releases = await ControlReleaseStore.ListAsync(session, evidence.Instrument, evidence.Run).ConfigureAwait(false);
        var released = releases.SelectMany(release => JsonSerializer.Deserialize<string[]>(release.Controls)!).ToHashSet(StringComparer.Ordinal);
        var doubts = ControlReview.InDoubt(evidence.Verdicts, evidence.Readings, released).Select(entry => new ReadingDoubt
        {
            ReadingId = entry.Reading.ReadingId,
            RunId = runId,
            Barcode = entry.Reading.Barcode,
            Cause = ControlCheckRule.Described(entry.Cause),
        }).ToList();
        return await ReadingDoubtStore.ReplaceAsync(session, runId, doubts).ConfigureAwait(false);
    }

    private static Task<IReadOnlyList<ControlPoint>> ListPointsAsync(WarehouseSession session, int runId) =>
        session.QueryAsync<ControlPoint>(ListPoints, new { runId });

    private sealed class RunName
    {
        public string Instrument { get; init; } = "";

        public string Run { get; init; } = "";
    }
}
