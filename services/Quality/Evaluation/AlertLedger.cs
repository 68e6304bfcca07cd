using System.Globalization;
using LabPipeline.Contracts.V1;
using LabPipeline.Quality.Rules;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Writes what the reconciliation decided: alerts, their messages and a line each in the change log, all in one transaction.</summary>
internal static class AlertLedger
{
    private const string Who = "quality";

    /// <summary>Brings the alerts of <paramref name="scopes"/> in line with <paramref name="findings"/>.</summary>
    /// <returns>How many alerts changed.</returns>
    public static async Task<int> ApplyAsync(
        WarehouseSession session, IReadOnlyCollection<string> scopes, IReadOnlyCollection<Finding> findings, DateTimeOffset now)
    {
        var existing = await AlertStore.ListByScopesAsync(session, scopes).ConfigureAwait(false);
        var changes = Reconciliation.Decide(existing, findings);
        foreach (var change in changes)
        {
            await WriteAsync(session, change, now).ConfigureAwait(false);
        }

        return changes.Count;
    }

    private static Task WriteAsync(WarehouseSession session, AlertChange change, DateTimeOffset now) => change.Kind switch
    {
        AlertChangeKind.Open => OpenAsync(session, change.Finding!, now),
        AlertChangeKind.RaiseAgain => RaiseAgainAsync(session, change.Existing!, change.Finding!, now),
        AlertChangeKind.Update => AlertStore.UpdateAsync(session, Described(change.Existing!, change.Finding!) with { ChangedAt = now }),
        _ => ClearAsync(session, change.Existing!, now),
    };

    private static async Task OpenAsync(WarehouseSession session, Finding finding, DateTimeOffset now)
    {
        var alert = Described(new Alert { Fingerprint = finding.Fingerprint, State = AlertStates.Open, TimesRaised = 1, OpenedAt = now, ChangedAt = now }, finding);
        var id = await AlertStore.AddAsync(session, alert).ConfigureAwait(false);
        await TellRaisedAsync(session, alert with { AlertId = id }, "alert raised", now).ConfigureAwait(false);
    }

    private static async Task RaiseAgainAsync(WarehouseSession session, Alert before, Finding finding, DateTimeOffset now)
    {
        var alert = Described(before, finding) with
        {
            State = AlertStates.Open,
            TimesRaised = before.TimesRaised + 1,
            OpenedAt = now,
            ChangedAt = now,
            ClearedAt = null,
            AcknowledgedAt = null,
            AcknowledgedBy = null,
            SettledAt = null,
            SettledBy = null,
            SettledWhy = null,
        };
        await AlertStore.UpdateAsync(session, alert).ConfigureAwait(false);
        await TellRaisedAsync(session, alert, "alert raised again", now).ConfigureAwait(false);
    }

    private static async Task TellRaisedAsync(WarehouseSession session, Alert alert, string what, DateTimeOffset now)
    {
        var message = new QcAlertRaised(alert.AlertId, alert.TimesRaised, alert.RuleName, alert.Level, alert.Headline);
        await OutboxStore.AddAsync(session, message, Identity(alert, "raised"), now).ConfigureAwait(false);
        await NoteAsync(session, alert, what, now).ConfigureAwait(false);
    }

    private static async Task ClearAsync(WarehouseSession session, Alert before, DateTimeOffset now)
    {
        var alert = before with { State = AlertStates.Cleared, ClearedAt = now, ChangedAt = now };
        await AlertStore.UpdateAsync(session, alert).ConfigureAwait(false);
        var message = new QcAlertCleared(alert.AlertId, alert.TimesRaised, alert.RuleName);
        await OutboxStore.AddAsync(session, message, Identity(alert, "cleared"), now).ConfigureAwait(false);
        await NoteAsync(session, alert, "alert cleared", now).ConfigureAwait(false);
    }

    private static Task NoteAsync(WarehouseSession session, Alert alert, string what, DateTimeOffset now) => ChangeLogStore.AddAsync(
        session, new Change { At = now, Who = Who, What = what, Subject = Alert.SubjectOf(alert.AlertId), Why = alert.Headline });

    private static string Identity(Alert alert, string what) =>
        string.Create(CultureInfo.InvariantCulture, $"{alert.Fingerprint}|{alert.TimesRaised}|{what}");

    private static Alert Described(Alert alert, Finding finding) => alert with
    {
        RuleName = finding.RuleName,
        Level = FindingLevels.TextOf(finding.Level),
        Scope = finding.Scope,
        TrialCode = finding.TrialCode,
        PullNo = finding.PullNo,
        Barcode = finding.Barcode,
        Headline = AlertText.Fit(finding.Headline),
        Advice = AlertText.Fit(finding.Advice),
        Facts = finding.Facts.ToJson(),
    };
}
