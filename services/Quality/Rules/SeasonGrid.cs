using LabPipeline.Warehouse.Results;

namespace LabPipeline.Quality.Rules;

/// <summary>What became of every measurement a plan expects of a pull, in the calendar of its trial.</summary>
public static class SeasonGrid
{
    public static IReadOnlyList<MeasurementState> Of(PullEvidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        return [.. evidence.Samples.SelectMany(sample => evidence.Expected.Select(expectation => Of(evidence, sample, expectation)))];
    }

    private static MeasurementState Of(PullEvidence evidence, PullSample sample, PullExpectation expectation)
    {
        var quantityId = expectation.Quantity.Id;
        return new MeasurementState
        {
            Barcode = sample.Barcode,
            QuantityId = quantityId,
            Readings = sample.CountOf(quantityId),
            State = StateOf(evidence, sample, expectation),
            Reason = sample.SetAside.GetValueOrDefault(quantityId, ""),
        };
    }

    private static string StateOf(PullEvidence evidence, PullSample sample, PullExpectation expectation)
    {
        var quantityId = expectation.Quantity.Id;
        if (sample.CountOf(quantityId) >= expectation.Readings)
        {
            return sample.FirstOfQuantity.TryGetValue(quantityId, out var first) && TrialCalendar.DateOf(first, evidence.Trial.TimeZone) > evidence.ClosesOn
                ? MeasurementStates.Late
                : MeasurementStates.Done;
        }

        return sample.SetAside.ContainsKey(quantityId) ? MeasurementStates.Excluded
            : evidence.IsClosed ? MeasurementStates.Missing
            : MeasurementStates.Expected;
    }
}
