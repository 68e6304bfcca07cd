using LabPipeline.Contracts.V1;
using LabPipeline.Warehouse.Machinery;
using LabPipeline.Warehouse.Plan.Rows;
using LabPipeline.Warehouse.Results;

namespace LabPipeline.Warehouse.Plan;

/// <summary>Loads plans into the warehouse. The same document again changes nothing; a longer one adds.</summary>
public sealed class PlanStore
{
    /// <summary>Loads <paramref name="plan"/> in the session's transaction, joins readings that waited for its samples, and tells about it.</summary>
    /// <returns>State <see cref="PlanLoadState.Refused"/>, with every reason and nothing written, when stored plots or labels would change.</returns>
    public static async Task<PlanLoad> LoadAsync(WarehouseSession session, TrialPlan plan, DateTimeOffset now, string who)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentException.ThrowIfNullOrEmpty(who);
        var offered = PlanRows.Of(plan, now);
        var stored = await PlanRowStore.FindAsync(session, plan.Code).ConfigureAwait(false);
        if (stored is null)
        {
            var taken = await PlanRowStore.FindByMarkAsync(session, plan.Season, plan.Mark).ConfigureAwait(false);
            return taken is null
                ? await LoadNewAsync(session, plan, offered, now, who).ConfigureAwait(false)
                : Refused([new PlanDifference($"mark {plan.Mark} of season {plan.Season}", $"trial {taken}", $"trial {plan.Code}")]);
        }

        var comparison = new PlanComparison(stored, offered);
        var refused = comparison.Refused();
        return refused.Count > 0
            ? Refused(refused)
            : await ExtendAsync(session, plan, comparison, stored.Trial.PlanSha256, now, who).ConfigureAwait(false);
    }

    /// <summary>A trial as it was planned, or null where no plan of it is loaded.</summary>
    public static Task<TrialRow?> FindTrialAsync(WarehouseSession session, string trialCode)
    {
        ArgumentNullException.ThrowIfNull(session);
        return PlanRowStore.FindTrialAsync(session, trialCode);
    }

    private static async Task<PlanLoad> LoadNewAsync(WarehouseSession session, TrialPlan plan, PlanRows offered, DateTimeOffset now, string who)
    {
        await PlanRowStore.InsertTrialAsync(session, offered.Trial).ConfigureAwait(false);
        await PlanRowStore.InsertAsync(session, offered.Levels).ConfigureAwait(false);
        await PlanRowStore.InsertAsync(session, offered.Bays).ConfigureAwait(false);
        await PlanRowStore.InsertAsync(session, offered.Plots, PlanRows.LevelsOf(plan, offered.Plots)).ConfigureAwait(false);
        await PlanRowStore.InsertAsync(session, offered.Pulls).ConfigureAwait(false);
        await PlanRowStore.InsertAsync(session, offered.Samples).ConfigureAwait(false);
        await PlanRowStore.InsertAsync(session, offered.Expected).ConfigureAwait(false);
        await PlanRowStore.InsertAsync(session, offered.Contrasts).ConfigureAwait(false);
        await KeepRepeatabilityAsync(session, plan, now, who).ConfigureAwait(false);
        await LogAsync(
            session,
            plan,
            "trial plan loaded",
            $"{plan.Plots.Count} plots, {plan.Pulls.Count} pulls, {offered.Samples.Count} samples; {DrawnWith(plan.Design)}document {plan.Sha256}",
            now,
            who).ConfigureAwait(false);
        return await JoinAsync(session, plan, PlanLoadState.Loaded, [], offered.Samples, now, who).ConfigureAwait(false);
    }

    private static string DrawnWith(TrialDesign design) => design.Seed is { } seed ? $"drawn with seed {seed}; " : "";

    private static async Task<PlanLoad> ExtendAsync(
        WarehouseSession session, TrialPlan plan, PlanComparison comparison, string storedSha256, DateTimeOffset now, string who)
    {
        var newRepeatability = await KeepRepeatabilityAsync(session, plan, now, who).ConfigureAwait(false);
        var corrected = comparison.Corrected();
        var added = comparison.Added();
        if (storedSha256 != plan.Sha256)
        {
            await PlanRowStore.UpdateTrialAsync(session, PlanRows.Of(plan, now).Trial).ConfigureAwait(false);
        }

        if (corrected.Count == 0 && added.Count == 0 && newRepeatability == 0)
        {
            return new PlanLoad(PlanLoadState.Unchanged, [], 0, [], [], []);
        }

        await WriteAsync(session, plan, comparison).ConfigureAwait(false);
        foreach (var difference in corrected)
        {
            await LogAsync(session, plan, "trial plan corrected", difference.ToString(), now, who).ConfigureAwait(false);
        }

        await LogAsync(session, plan, "trial plan extended", added.Count == 0 ? "nothing added" : string.Join(", ", added), now, who).ConfigureAwait(false);
        return await JoinAsync(session, plan, PlanLoadState.Extended, corrected, comparison.Samples.Added, now, who).ConfigureAwait(false);
    }

    private static async Task WriteAsync(WarehouseSession session, TrialPlan plan, PlanComparison comparison)
    {
        await PlanRowStore.InsertAsync(session, comparison.Levels.Added).ConfigureAwait(false);
        await PlanRowStore.UpdateAsync(session, comparison.Levels.Changed.Select(pair => pair.Offered)).ConfigureAwait(false);
        await PlanRowStore.InsertAsync(session, comparison.Bays.Added).ConfigureAwait(false);
        await PlanRowStore.UpdateAsync(session, comparison.Bays.Changed.Select(pair => pair.Offered)).ConfigureAwait(false);
        await PlanRowStore.InsertAsync(session, comparison.Plots.Added, PlanRows.LevelsOf(plan, comparison.Plots.Added)).ConfigureAwait(false);
        await PlanRowStore.InsertAsync(session, comparison.Pulls.Added).ConfigureAwait(false);
        await PlanRowStore.UpdateAsync(session, comparison.Pulls.Changed.Select(pair => pair.Offered)).ConfigureAwait(false);
        await PlanRowStore.InsertAsync(session, comparison.Samples.Added).ConfigureAwait(false);
        await PlanRowStore.InsertAsync(session, comparison.Expected.Added).ConfigureAwait(false);
        await PlanRowStore.UpdateAsync(session, comparison.Expected.Changed.Select(pair => pair.Offered)).ConfigureAwait(false);
        await PlanRowStore.InsertAsync(session, comparison.Contrasts.Added).ConfigureAwait(false);
    }

    private static async Task<PlanLoad> JoinAsync(
        WarehouseSession session,
        TrialPlan plan,
        PlanLoadState state,
        IReadOnlyList<PlanDifference> corrected,
        IReadOnlyList<SampleRow> samples,
        DateTimeOffset now,
        string who)
    {
        var barcodes = await WaitingStore.JoinedBarcodesAsync(session, plan.Code, samples).ConfigureAwait(false);
        var files = await WaitingStore.WaitingFilesAsync(session, plan.Code).ConfigureAwait(false);
        var whole = await WaitingStore.ReleaseAsync(session, files, plan.Code, now, who).ConfigureAwait(false);
        var fileIds = files.Select(file => file.FileId).ToList();
        await OutboxStore.AddAsync(
            session, new TrialPlanLoaded(plan.Code, barcodes, fileIds), $"{plan.Code}|{plan.Sha256}|{now:O}", now).ConfigureAwait(false);
        return new PlanLoad(state, corrected, samples.Count, barcodes, fileIds, whole);
    }

    /// <summary>Keeps the values that were never kept before; an older document does not bring back what the laboratory has replaced since.</summary>
    private static async Task<int> KeepRepeatabilityAsync(WarehouseSession session, TrialPlan plan, DateTimeOffset now, string who)
    {
        var known = await RepeatabilityStore.ListAsync(session).ConfigureAwait(false);
        var fresh = plan.Repeatability.Where(value => !known.Any(value.IsKeptAs)).ToList();
        foreach (var value in fresh)
        {
            await RepeatabilityStore.KeepAsync(session, value.ToRow(now, who)).ConfigureAwait(false);
        }

        return fresh.Count;
    }

    private static Task LogAsync(WarehouseSession session, TrialPlan plan, string what, string why, DateTimeOffset now, string who) =>
        ChangeLogStore.AddAsync(session, new Change { At = now, Who = who, What = what, Subject = "trial:" + plan.Code, Why = why });

    private static PlanLoad Refused(IReadOnlyList<PlanDifference> differences) => new(PlanLoadState.Refused, differences, 0, [], [], []);
}
