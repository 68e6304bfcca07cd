using System.Reflection;
using LabPipeline.Reporting.Season.Data;
using LabPipeline.Warehouse;

namespace LabPipeline.Reporting.Report;

/// <summary>Makes season reports from the warehouse, locks them, and makes locked ones again.</summary>
public sealed class SeasonReportStore
{
    private static readonly SqlText Insert = SqlText.Load<SeasonReportStore>("insert-season-report");
    private static readonly SqlText Find = SqlText.Load<SeasonReportStore>("find-season-report");
    private static readonly SqlText FindLast = SqlText.Load<SeasonReportStore>("find-last-season-report");

    /// <summary>Name and version of this program as reports state it.</summary>
    public static string Software { get; } =
        "LabPipeline " + typeof(SeasonReportStore).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;

    /// <summary>A report of the data as they stand; nothing is kept.</summary>
    public static async Task<SeasonReportOutcome> DraftAsync(WarehouseSession session, string trialCode, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(session);
        return await SeasonDataStore.FindAsync(session, trialCode, now).ConfigureAwait(false) is { } data
            ? new SeasonReportOutcome(SeasonReportState.Made, Make(data, new ReportStamp(null, null, Software)), null, "")
            : NotFound(trialCode);
    }

    /// <summary>Makes a report, and keeps the data it stands on under the next version, so that it can be made again byte by byte.</summary>
    public static async Task<SeasonReportOutcome> LockAsync(WarehouseSession session, string trialCode, string who, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentException.ThrowIfNullOrEmpty(who);
        if (await SeasonDataStore.FindAsync(session, trialCode, now).ConfigureAwait(false) is not { } found)
        {
            return NotFound(trialCode);
        }

        var json = SeasonArchive.ToJson(found);
        var version = await session.ScalarAsync<int>(FindLast, new { trialCode }).ConfigureAwait(false) + 1;
        var row = new LockedReportRow
        {
            TrialCode = trialCode,
            Version = version,
            LockedAt = now,
            LockedBy = who,
            LastReadingId = found.Freeze.LastReadingId,
            LastChangeId = found.Freeze.LastChangeId,
            PlanSha256 = found.Trial.PlanSha256,
            Software = Software,
            DataSha256 = SeasonArchive.Sha256(json),
            Data = SeasonArchive.Pack(json),
        };
        // Made from the kept text, not from what was read: then the next time cannot differ.
        var page = Make(SeasonArchive.Unpack(row), new ReportStamp(version, who, Software));
        await session.ExecuteAsync(Insert, row with { PageSha256 = SeasonArchive.Sha256(page) }).ConfigureAwait(false);
        return new SeasonReportOutcome(SeasonReportState.Made, page, version, "");
    }

    /// <summary>Makes a locked report again from the data kept with it, whatever the warehouse holds by now.</summary>
    public static async Task<SeasonReportOutcome> AgainAsync(WarehouseSession session, string trialCode, int version)
    {
        ArgumentNullException.ThrowIfNull(session);
        if (await session.FirstOrDefaultAsync<LockedReportRow>(Find, new { trialCode, version }).ConfigureAwait(false) is not { } row)
        {
            var last = await session.ScalarAsync<int>(FindLast, new { trialCode }).ConfigureAwait(false);
            return new SeasonReportOutcome(SeasonReportState.VersionNotFound, "", null,
                $"Trial '{trialCode}' has no locked report of version {version}; {(last == 0 ? "none was locked yet" : $"versions 1 to {last} are there")}.");
        }

        var page = Make(SeasonArchive.Unpack(row), new ReportStamp(version, row.LockedBy, Software));
        var found = SeasonArchive.Sha256(page);
        return found == row.PageSha256
            ? new SeasonReportOutcome(SeasonReportState.Made, page, version, "")
            : new SeasonReportOutcome(SeasonReportState.Differs, page, version,
                $"The page has SHA-256 {found}; {row.PageSha256} was locked. The data are the same; it was locked by {row.Software} and made again by {Software}. Use that program for the same bytes.");
    }

    private static string Make(SeasonData data, ReportStamp stamp) => SeasonReport.Html(ReportContent.Of(data, stamp));

    private static SeasonReportOutcome NotFound(string trialCode) => new(
        SeasonReportState.TrialNotFound, "", null, $"Trial '{trialCode}' is not in the warehouse. Check the code, or load the trial's plan.");
}
