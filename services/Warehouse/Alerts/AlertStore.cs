using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Warehouse.Alerts;

/// <summary>Quality alerts: listed and settled by people, opened and cleared by the rules. Every change leaves a line in the change log.</summary>
public sealed class AlertStore
{
    private const int ScopesAtOnce = 400;

    private static readonly SqlText List = SqlText.Load<AlertStore>("list-alerts");
    private static readonly SqlText CountOpen = SqlText.Load<AlertStore>("count-open-alerts");
    private static readonly SqlText Find = SqlText.Load<AlertStore>("find-alert");
    private static readonly SqlText ListByScopes = SqlText.Load<AlertStore>("list-alerts-by-scopes");
    private static readonly SqlText ListOpenByKind = SqlText.Load<AlertStore>("list-open-alerts-by-scope-kind");
    private static readonly SqlText Insert = SqlText.Load<AlertStore>("insert-alert");
    private static readonly SqlText Update = SqlText.Load<AlertStore>("update-alert");
    private static readonly SqlText FindId = SqlText.Load<AlertStore>("find-alert-id");
    private static readonly SqlText Acknowledge = SqlText.Load<AlertStore>("acknowledge-alert");
    private static readonly SqlText Settle = SqlText.Load<AlertStore>("settle-alert");

    public static Task<IReadOnlyList<Alert>> ListAsync(WarehouseSession session, AlertFilter filter) => session.QueryAsync<Alert>(List, filter);

    /// <summary>How many alerts are open, by trial, pull, rule and level.</summary>
    public static Task<IReadOnlyList<AlertCount>> CountOpenAsync(WarehouseSession session) => session.QueryAsync<AlertCount>(CountOpen);

    public static Task<Alert?> GetAsync(WarehouseSession session, int alertId) => session.FirstOrDefaultAsync<Alert>(Find, new { alertId });

    /// <summary>Every alert, whatever its state, that the evidence of these scopes decides about.</summary>
    public static async Task<IReadOnlyList<Alert>> ListByScopesAsync(WarehouseSession session, IReadOnlyCollection<string> scopes)
    {
        var alerts = new List<Alert>();
        foreach (var part in scopes.Chunk(ScopesAtOnce))
        {
            alerts.AddRange(await session.QueryAsync<Alert>(ListByScopes, new { scopes = part }).ConfigureAwait(false));
        }

        return alerts;
    }

    /// <summary>Open alerts whose scope starts with <paramref name="kind"/>, such as <c>held:</c>.</summary>
    public static Task<IReadOnlyList<Alert>> ListOpenByKindAsync(WarehouseSession session, string kind) =>
        session.QueryAsync<Alert>(ListOpenByKind, new { kind = kind + "%" });

    /// <summary>Stores a new alert.</summary>
    /// <returns>Its number.</returns>
    public static async Task<int> AddAsync(WarehouseSession session, Alert alert)
    {
        await session.ExecuteAsync(Insert, alert).ConfigureAwait(false);
        return await session.ScalarAsync<int>(FindId, new { alert.Fingerprint }).ConfigureAwait(false);
    }

    /// <summary>Rewrites everything of an alert but its number and fingerprint.</summary>
    public static Task UpdateAsync(WarehouseSession session, Alert alert) => session.ExecuteAsync(Update, alert);

    /// <summary>Notes that <paramref name="who"/> has seen an open alert; the first to do so stays noted.</summary>
    public static Task<AlertAction> AcknowledgeAsync(WarehouseSession session, int alertId, string who, DateTimeOffset now)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(who);
        var change = new Change { At = now, Who = who, What = "alert acknowledged", Subject = Alert.SubjectOf(alertId), Why = "seen" };
        return ActAsync(session, Acknowledge, alertId, change);
    }

    /// <summary>Closes an open alert by decision of <paramref name="who"/>, who says why.</summary>
    public static Task<AlertAction> SettleAsync(WarehouseSession session, int alertId, string who, string why, DateTimeOffset now)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(who);
        ArgumentException.ThrowIfNullOrWhiteSpace(why);
        var change = new Change { At = now, Who = who, What = "alert settled", Subject = Alert.SubjectOf(alertId), Why = why };
        return ActAsync(session, Settle, alertId, change);
    }

    private static async Task<AlertAction> ActAsync(WarehouseSession session, SqlText statement, int alertId, Change change)
    {
        var changed = await session.ExecuteAsync(statement, new { alertId, change.Who, change.Why, change.At }).ConfigureAwait(false);
        if (changed == 1)
        {
            await ChangeLogStore.AddAsync(session, change).ConfigureAwait(false);
            return AlertAction.Done;
        }

        var alert = await GetAsync(session, alertId).ConfigureAwait(false);
        return alert switch
        {
            null => AlertAction.NotFound,
            { State: AlertStates.Open } => AlertAction.Done,
            _ => AlertAction.NotOpen,
        };
    }
}
