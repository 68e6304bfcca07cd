using LabPipeline.Reporting.Report;
using LabPipeline.Reporting.Season.Data;
using LabPipeline.Warehouse;

namespace LabPipeline.Reporting.Tracing;

/// <summary>Follows a mean of a season report to its readings, files and lines, and to what people did about them.</summary>
public sealed class EvidenceStore
{
    private static readonly SqlText ListReadings = SqlText.Load<EvidenceStore>("list-evidence-readings");
    private static readonly SqlText ListAlerts = SqlText.Load<EvidenceStore>("list-evidence-alerts");
    private static readonly SqlText ListChanges = SqlText.Load<EvidenceStore>("list-evidence-changes");

    /// <param name="session">Where to read.</param>
    /// <param name="trialCode">The trial.</param>
    /// <param name="id">Name of the evidence as the report prints it.</param>
    /// <returns>The trail, or null where the trial or the name is unknown.</returns>
    public static async Task<EvidenceTrail?> FindAsync(WarehouseSession session, string trialCode, string id)
    {
        ArgumentNullException.ThrowIfNull(session);
        var data = await SeasonDataStore.FindAsync(session, trialCode, DateTimeOffset.UnixEpoch).ConfigureAwait(false);
        if (data is null || new EvidenceIndex(data).Groups.FirstOrDefault(group => group.Id == id) is not { } group)
        {
            return null;
        }

        string[] barcodes = [.. group.Samples.Select(sample => sample.Barcode)];
        var readings = await session.QueryAsync<EvidenceReading>(ListReadings, new { barcodes }).ConfigureAwait(false);
        var alerts = await session.QueryAsync<long>(ListAlerts, new { barcodes }).ConfigureAwait(false);
        string[] subjects =
        [
            .. readings.Select(reading => "file:" + reading.FileSha256).Distinct(),
            .. alerts.Select(alert => FormattableString.Invariant($"alert:{alert}")),
            "trial:" + trialCode,
        ];
        var changes = await session.QueryAsync<EvidenceChange>(ListChanges, new { subjects }).ConfigureAwait(false);
        return new EvidenceTrail(group.Id, group.Cell, group.PullNo, barcodes, readings, changes);
    }
}
