using LabPipeline.Reporting.Planning;
using LabPipeline.Warehouse;

namespace LabPipeline.Reporting.Bench;

/// <summary>Pulls and their samples as the warehouse holds them.</summary>
public sealed class BenchPullStore
{
    private static readonly SqlText ListPulls = SqlText.Load<BenchPullStore>("list-bench-pulls");
    private static readonly SqlText ListAll = SqlText.Load<BenchPullStore>("list-all-pulls");
    private static readonly SqlText ListSamples = SqlText.Load<BenchPullStore>("list-pull-bags");

    /// <summary>The pulls of a trial, without samples; none when the trial is not in the warehouse.</summary>
    public static Task<IReadOnlyList<BenchPull>> ListAsync(WarehouseSession session, string trialCode)
    {
        ArgumentNullException.ThrowIfNull(session);
        return session.QueryAsync<BenchPull>(ListPulls, new { trialCode });
    }

    /// <summary>Pulls of other trials that are open on days on which <paramref name="pull"/> is.</summary>
    public static async Task<IReadOnlyList<PullOverlap>> ListOpenAtOnceAsync(WarehouseSession session, BenchPull pull)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(pull);
        var others = await session.QueryAsync<BenchPull>(ListAll).ConfigureAwait(false);
        return [.. others.Where(other => other.TrialCode != pull.TrialCode && other.OpensOn <= pull.ClosesOn && pull.OpensOn <= other.ClosesOn).Select(pull.With)];
    }

    /// <summary>A pull with its samples, or null when there is no such pull.</summary>
    public static async Task<BenchPull?> FindAsync(WarehouseSession session, string trialCode, int pullNo)
    {
        var pull = (await ListAsync(session, trialCode).ConfigureAwait(false)).SingleOrDefault(pull => pull.PullNo == pullNo);
        return pull is null
            ? null
            : pull with { Samples = await session.QueryAsync<PullSample>(ListSamples, new { pull.TrialCode, pull.PullNo }).ConfigureAwait(false) };
    }
}
