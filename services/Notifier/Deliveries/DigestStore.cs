using LabPipeline.Notifier.Messages;
using LabPipeline.Warehouse;

namespace LabPipeline.Notifier.Deliveries;

/// <summary>Deliveries that a storm folded into one message; they share the digest's identifier and its fate.</summary>
public sealed class DigestStore
{
    private static readonly SqlText FindDue = SqlText.Load<DigestStore>("find-due-digest");
    private static readonly SqlText Start = SqlText.Load<DigestStore>("start-digest");
    private static readonly SqlText FindHead = SqlText.Load<DigestStore>("find-digest");
    private static readonly SqlText ListLines = SqlText.Load<DigestStore>("list-digest-lines");
    private static readonly SqlText Update = SqlText.Load<DigestStore>("update-digest");

    /// <summary>A digest that was claimed before and has not arrived, whose time has come again.</summary>
    public static Task<string?> FindDueAsync(WarehouseSession session, string channel, DateTimeOffset now) =>
        session.FirstOrDefaultAsync<string>(FindDue, new { channel, now });

    /// <summary>Folds everything that is due into a digest and claims it.</summary>
    public static Task StartAsync(WarehouseSession session, string channel, string digestId, DateTimeOffset now, Marking claim) => session.ExecuteAsync(
        Start, new { channel, digestId, now, claim.AttemptStep, claim.NextAttemptAt, claim.LastAttemptAt });

    public static async Task<DigestHead> FindHeadAsync(WarehouseSession session, string channel, string digestId) =>
        (await session.FirstOrDefaultAsync<DigestHead>(FindHead, new { channel, digestId }).ConfigureAwait(false))!;

    public static Task<IReadOnlyList<DigestRow>> ListLinesAsync(WarehouseSession session, string channel, string digestId) =>
        session.QueryAsync<DigestRow>(ListLines, new { channel, digestId, most = DigestNotice.MostLines });

    public static Task MarkAsync(WarehouseSession session, string channel, string digestId, Marking marking) => session.ExecuteAsync(
        Update,
        new { channel, digestId, marking.State, marking.AttemptStep, marking.NextAttemptAt, marking.LastAttemptAt, marking.DeliveredAt, marking.Error });
}
