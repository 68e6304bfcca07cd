namespace LabPipeline.Reporting.Exports;

/// <summary>What an export is about: a trial, or one pull of it.</summary>
public sealed record ExportScope(string TrialCode, int? PullNo = null)
{
    /// <returns>The outcome that says what is missing from <paramref name="planned"/>, or null when all is there.</returns>
    internal ExportOutcome? FindMissing(IReadOnlyList<PlannedPull> planned)
    {
        var pulls = planned.Where(pull => pull.TrialCode == TrialCode).Select(pull => pull.PullNo).ToList();
        if (pulls.Count == 0)
        {
            var known = planned.Select(pull => pull.TrialCode).Distinct().ToList();
            return new ExportOutcome(
                ExportState.TrialNotFound,
                0,
                $"Trial '{TrialCode}' is not in the warehouse; {(known.Count == 0 ? "it holds no trial" : "it holds " + string.Join(", ", known))}. Check the code, or load the trial's plan.");
        }

        return PullNo is null || pulls.Contains(PullNo)
            ? null
            : new ExportOutcome(
                ExportState.PullNotFound,
                0,
                $"Trial {TrialCode} has no pull {PullNo}; it has {string.Join(", ", pulls)}. Name one of them, or none for all.");
    }
}
