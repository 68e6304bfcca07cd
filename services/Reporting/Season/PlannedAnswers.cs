using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Comparisons;
using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Reporting.Season;

/// <summary>Estimates the trial's planned contrasts from adjusted means.</summary>
internal static class PlannedAnswers
{
    public static IReadOnlyList<PlannedAnswer> Of(TrialModel model, IReadOnlyList<AdjustedMeans> means) =>
        [.. model.Questions.Select(question => Answer(question, means.FirstOrDefault(one => one.Term.Name == question.Term)))];

    private static PlannedAnswer Answer(PlannedQuestion question, AdjustedMeans? means)
    {
        if (means is null)
        {
            return new PlannedAnswer(question, null, $"there are no means of {question.Term.Replace(":", " x ", StringComparison.Ordinal)}");
        }

        try
        {
            var found = means.Contrast([.. means.Cells.Select(cell => question.Coefficients.GetValueOrDefault(cell.Label))]);
            var (low, high) = found.Interval(MeansTables.Alpha);
            return new PlannedAnswer(question, new ContrastEstimate(question.Name, found.Estimate, found.StandardError, found.Df, found.T, found.P, low, high), null);
        }
        catch (Exception fault) when (fault is NotEstimableException or ArgumentException)
        {
            return new PlannedAnswer(question, null, MeansTables.Reason(fault));
        }
    }
}
