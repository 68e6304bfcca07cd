using LabPipeline.Board.Serving;
using LabPipeline.Reporting.Bench;
using LabPipeline.Reporting.Labels;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Results;

namespace LabPipeline.Board.Papers;

/// <summary>Finds what an order of papers is about.</summary>
internal static class PaperDesk
{
    /// <returns>Null when there is no trial with pulls, or none the order asks for.</returns>
    public static async Task<PaperChoice?> FindAsync(WarehouseSession session, PaperOrder order, LabClock clock)
    {
        var trials = await PullProgressStore.ListTrialsAsync(session);
        var trial = string.IsNullOrEmpty(order.Trial) ? (trials.Count == 0 ? null : trials[0]) : trials.FirstOrDefault(candidate => candidate.TrialCode == order.Trial);
        if (trial is null)
        {
            return null;
        }

        var pulls = await BenchPullStore.ListAsync(session, trial.TrialCode);
        var today = clock.TodayIn(trial.TimeZone) ?? clock.TodayHere();
        var number = order.Pull ?? (pulls.FirstOrDefault(pull => pull.ClosesOn >= today) ?? pulls[^1]).PullNo;
        if (await BenchPullStore.FindAsync(session, trial.TrialCode, number) is not { } whole)
        {
            return null;
        }

        var bays = whole.Samples.Select(sample => sample.BayCode).Distinct().Order(StringComparer.OrdinalIgnoreCase).ToList();
        var bay = bays.FirstOrDefault(code => code == order.Bay);
        return new PaperChoice
        {
            Trials = [.. trials.Select(candidate => candidate.TrialCode)],
            Pulls = [.. pulls.Select(pull => pull.PullNo)],
            Bays = bays,
            Bay = bay,
            Paper = PaperKinds.All.FirstOrDefault(kind => kind == order.Paper) ?? PaperKinds.Tags,
            First = order.First ?? 1,
            Pull = bay is null ? whole : whole with { Samples = [.. whole.Samples.Where(sample => sample.BayCode == bay)] },
            Untimely = whole.Untimely(today),
            Overlaps = await BenchPullStore.ListOpenAtOnceAsync(session, whole),
        };
    }

    /// <summary>The labels of a choice, and the sheet they are printed on.</summary>
    public static async Task<(LabelSheet Sheet, IReadOnlyList<LabelText> Labels)> LabelsAsync(WarehouseSession session, PaperChoice choice)
    {
        var samples = await LabelStore.ListAsync(session, choice.Pull);
        return choice.Paper == PaperKinds.Tags
            ? (LabelSheet.Tags, samples)
            : (LabelSheet.Small, LabelSet.Halves(samples, choice.Paper == PaperKinds.Tubers ? choice.Pull.TubersPerSample : null));
    }
}
