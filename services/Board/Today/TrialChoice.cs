using LabPipeline.Warehouse.Results;

namespace LabPipeline.Board.Today;

/// <summary>Which trials today is about.</summary>
internal static class TrialChoice
{
    /// <summary>The trial asked for; otherwise all that have not ended; otherwise the one that ended last.</summary>
    /// <param name="trials">All trials, the one that ends last first.</param>
    /// <param name="asked">A trial code, or null.</param>
    /// <param name="todayOf">Today's date where a trial is.</param>
    /// <returns>Empty when there is no trial, or none of the code asked for.</returns>
    public static IReadOnlyList<TrialSpan> Choose(IReadOnlyList<TrialSpan> trials, string? asked, Func<TrialSpan, DateOnly> todayOf)
    {
        if (!string.IsNullOrEmpty(asked))
        {
            return [.. trials.Where(trial => trial.TrialCode == asked)];
        }

        var running = trials.Where(trial => trial.LastClosesOn >= todayOf(trial)).ToList();
        return running.Count > 0 ? running : [.. trials.Take(1)];
    }
}
