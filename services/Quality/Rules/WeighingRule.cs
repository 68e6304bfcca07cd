using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Thresholds;

namespace LabPipeline.Quality.Rules;

/// <summary>A weighing session is off as a whole, or gave a gravity no tuber has: balance or sling was not tared.</summary>
/// <remarks>
/// Every sample is compared with its mates of the same clone and treatment weighed in other sessions of the same pull, which takes the
/// differences between varieties out. The session's shift is the median of these differences; its standard error is 1.2533 x 1.4826 MAD / sqrt(n),
/// that of a median with a robust spread. A single odd sample moves neither.
/// </remarks>
public sealed class WeighingRule(RuleLimits limits) : IRule<RunEvidence>
{
    private const decimal MedianError = 1.2533m;
    private const decimal RobustSpread = 1.4826m;

    public string Name => "weighing off";

    public IEnumerable<Finding> Evaluate(RunEvidence evidence)
    {
        var implausible = evidence.Weighed.Where(sample => !evidence.ThresholdsOf(sample.TrialCode).IsPlausible(QuantityCatalogue.SpecificGravity, sample.SpecificGravity)).ToList();
        if (implausible.Count > 0)
        {
            yield return Implausible(evidence, implausible);
        }

        foreach (var pull in evidence.Weighed.GroupBy(sample => (sample.TrialCode, sample.PullNo)).OrderBy(pull => pull.Key))
        {
            if (Compare(evidence, pull.Key, [.. pull]) is { } finding)
            {
                yield return finding;
            }
        }
    }

    private Finding Implausible(RunEvidence evidence, List<WeighedSample> samples)
    {
        var range = string.Join(" or ", samples.Select(sample => evidence.ThresholdsOf(sample.TrialCode).Range(QuantityCatalogue.SpecificGravity)).Distinct(StringComparer.Ordinal));
        var facts = new FactSheet();
        samples.ForEach(sample => facts.Add(sample.Barcode, sample.SpecificGravity));
        return Findings.Of(
            this, evidence, FindingLevel.Hold, "implausible",
            $"{evidence.Title}: specific gravity {NumberText.List(samples.ConvertAll(sample => $"{Gravity(sample.SpecificGravity)} ({sample.Barcode})"))} outside {range}.",
            "Check the tare of balance and sling with the check mass, then weigh these samples again.",
            facts.Add("plausible", range).Add("files", Files(samples)));
    }

    private Finding? Compare(RunEvidence evidence, (string TrialCode, int PullNo) pull, List<WeighedSample> samples)
    {
        var elsewhere = evidence.WeighedElsewhere.Where(sample => (sample.TrialCode, sample.PullNo) == pull)
            .ToLookup(sample => sample.Mates, StringComparer.Ordinal);
        var differences = samples.Where(sample => elsewhere.Contains(sample.Mates))
            .Select(sample => sample.SpecificGravity - Median(elsewhere[sample.Mates].Select(mate => mate.SpecificGravity)))
            .ToList();
        if (differences.Count < limits.SessionSamples)
        {
            return TooFew(evidence, pull, differences.Count);
        }

        var shift = Median(differences);
        var error = MedianError * RobustSpread * Median(differences.Select(difference => Math.Abs(difference - shift))) / (decimal)Math.Sqrt(differences.Count);
        var most = LargestShift(evidence, pull.TrialCode);
        return Math.Abs(shift) > most && Math.Abs(shift) > limits.SessionErrors * error
            ? Shifted(evidence, samples, differences.Count, shift, error)
            : null;
    }

    private Finding Shifted(RunEvidence evidence, List<WeighedSample> samples, int count, decimal shift, decimal error)
    {
        var pull = (samples[0].TrialCode, samples[0].PullNo);
        var sessions = evidence.WeighedElsewhere.Where(sample => (sample.TrialCode, sample.PullNo) == pull).Select(sample => sample.Run).Distinct(StringComparer.Ordinal).Count();
        var which = sessions == 1 ? " With one other session it is not known which of the two is off." : "";
        return Findings.Of(
            this, evidence, FindingLevel.Hold, NumberText.Invariant($"shift {pull.TrialCode}/{pull.PullNo}"),
            NumberText.Invariant($"{evidence.Title}: specific gravity of {count} samples of pull {pull.TrialCode}/{pull.PullNo} is shifted by {Signed(shift)} against their mates ")
                + $"in other sessions; limits {NumberText.Of(LargestShift(evidence, pull.TrialCode))} and {NumberText.Of(limits.SessionErrors)} standard errors of {Gravity(error)}.",
            "Check the tare of balance and sling with the check mass; a sling of 12 g left on makes 0.004. Weigh two samples again before the rest." + which,
            new FactSheet().Add("shift", shift).Add("standard error", error).Add("samples compared", count).Add("other sessions", sessions).Add("files", Files(samples)));
    }

    private decimal LargestShift(RunEvidence evidence, string trialCode) =>
        evidence.ThresholdsOf(trialCode).Find(QuantityCatalogue.SpecificGravity, ThresholdKinds.Shift) ?? limits.SessionShift;

    private Finding TooFew(RunEvidence evidence, (string TrialCode, int PullNo) pull, int count) => Findings.NotEvaluated(
        this, evidence,
        NumberText.Invariant($"{count} samples of pull {pull.TrialCode}/{pull.PullNo} have mates of the same clone and treatment in other sessions, {limits.SessionSamples} are needed"));

    private static string Files(List<WeighedSample> samples) =>
        string.Join(", ", samples.Select(sample => sample.FileName).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));

    private static string Signed(decimal shift) => (shift > 0m ? "+" : "") + Gravity(shift);

    private static string Gravity(decimal value) => NumberText.Invariant($"{value:0.0000}");

    private static decimal Median(IEnumerable<decimal> values)
    {
        var sorted = values.Order().ToList();
        return (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2m;
    }
}
