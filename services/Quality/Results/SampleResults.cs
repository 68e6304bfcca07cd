using LabPipeline.Science.Quantities;
using LabPipeline.Science.Repeatability;

namespace LabPipeline.Quality.Results;

/// <summary>All results of one sample from its readings in effect. Pure: the same readings give the same results, whatever order they came in.</summary>
public static class SampleResults
{
    /// <param name="readings">Readings in effect.</param>
    /// <param name="trial">What the trial decided beforehand.</param>
    /// <param name="repeatability">Repeatability in use for each quantity.</param>
    /// <param name="furtherExtracts">How the laboratory adds extracts when two disagree: one at a time (the default), or two at once.</param>
    /// <param name="moreExtracts">False when no further extract can be made: the procedure ends with what there is.</param>
    public static SampleComputation Compute(
        SampleReadings readings,
        TrialSettings trial,
        RepeatabilityTable repeatability,
        RepeatCost furtherExtracts = RepeatCost.Expensive,
        bool moreExtracts = true)
    {
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(trial);
        ArgumentNullException.ThrowIfNull(repeatability);
        var sheet = new ResultSheet();
        GravityResults.Compute(readings, trial, sheet);
        new SugarResults(readings, trial, repeatability, sheet.Find(QuantityCatalogue.DryMatter)?.Value, furtherExtracts, moreExtracts, sheet).Compute();
        MassResults.Compute(readings, sheet);
        new ColourResults(readings, trial, sheet).Compute();
        BenchResults.Compute(readings, trial, sheet);
        var inDoubt = readings.All.Where(reading => reading.InDoubt).Select(reading => reading.ReadingId).ToHashSet();
        return new SampleComputation(
            [.. sheet.Results.OrderBy(result => result.Quantity.Id).Select(result => result with { InDoubt = result.FromReadings.Any(inDoubt.Contains) })],
            sheet.Faults,
            sheet.Agreements);
    }
}
