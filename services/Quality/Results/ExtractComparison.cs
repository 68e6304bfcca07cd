using LabPipeline.Science.Quantities;
using LabPipeline.Science.Repeatability;
using LabPipeline.Science.Units;

namespace LabPipeline.Quality.Results;

/// <summary>Makes one result of a sample's extracts by the acceptability procedure of ISO 5725-6, 5.2.</summary>
/// <remarks>
/// A trial that plans more than two extracts, or a sample with more than four, is compared once, all together: mean within the critical
/// range, else median. While the procedure still asks for more, the mean of two or the median of three stands, marked as open. No extract
/// is ever left out to make the rest agree.
/// </remarks>
internal sealed record ExtractComparison(LabResult Content, IReadOnlyList<ExtractResult> Used, string Basis, ExtractAgreement Agreement)
{
    private const int LongestProcedure = 4;
    private const int MostCompared = 20;

    /// <param name="quantity">Glucose or sucrose.</param>
    /// <param name="extracts">One or more.</param>
    /// <param name="repeatability">In use for the quantity.</param>
    /// <param name="planned">Extracts the trial plans for each sample.</param>
    /// <param name="further">How further extracts are added.</param>
    /// <param name="more">False when no further extract can be made.</param>
    public static ExtractComparison Of(
        Quantity quantity, IReadOnlyList<ExtractResult> extracts, RepeatabilityModel repeatability, int planned, RepeatCost further, bool more = true)
    {
        var ordered = extracts.OrderBy(extract => extract.MeasuredAt ?? DateTimeOffset.MaxValue)
            .ThenBy(extract => extract.Extract, StringComparer.Ordinal).ToList();
        var agreement = new ExtractAgreement
        {
            Quantity = quantity,
            Extracts = ordered,
            Outcome = AgreementOutcome.OneExtract,
            Repeatability = repeatability,
            RepeatabilitySd = repeatability.SdAt(ordered.Average(extract => (CensoredMean.Lowest(extract.Content) + CensoredMean.Highest(extract.Content)) / 2m)),
        };
        if (ordered.Count == 1)
        {
            return new(ordered[0].Content, ordered, "one extract", agreement);
        }

        if (agreement.RepeatabilitySd <= 0m || ordered.Count > MostCompared)
        {
            return NotJudged(ordered, agreement);
        }

        if (ordered.Any(extract => extract.Content.Raw is null))
        {
            return Censored(ordered, agreement, more);
        }

        return planned > 2 || ordered.Count > LongestProcedure ? Together(ordered, agreement, more) : Procedure(ordered, agreement, further, more);
    }

    private static ExtractComparison NotJudged(List<ExtractResult> ordered, ExtractAgreement agreement)
    {
        var why = ordered.Count > MostCompared
            ? $"critical ranges are published for up to {MostCompared} results and there are {ordered.Count}"
            : $"the repeatability kept for {agreement.Quantity.Name} is 0";
        return new(MeanOf(ordered), ordered, $"mean of {ordered.Count}, not compared", agreement with { Outcome = AgreementOutcome.NotJudged, WhyNot = why });
    }

    private static ExtractComparison Procedure(List<ExtractResult> ordered, ExtractAgreement agreement, RepeatCost further, bool more)
    {
        var values = ordered.ConvertAll(extract => extract.Content.Raw!.Value);
        var decision = new AcceptabilityCheck(agreement.RepeatabilitySd, further).Decide(values, more);
        var used = ordered.Take(decision.ResultsUsed).ToList();
        var judged = agreement with
        {
            Compared = decision.LastStep.Results,
            Range = decision.LastStep.Range,
            CriticalRange = decision.LastStep.CriticalRange,
            MoreNeeded = decision.MoreNeeded,
            Outcome = decision.Outcome switch
            {
                AcceptabilityOutcome.Mean => AgreementOutcome.Agrees,
                AcceptabilityOutcome.Median => AgreementOutcome.Median,
                AcceptabilityOutcome.Unresolved => AgreementOutcome.Unresolved,
                _ => AgreementOutcome.Open,
            },
        };
        return decision.FinalResult is { } final
            ? new(Limited(final, used), used, decision.Rule, judged)
            : new(
                Limited(values.Count == 2 ? values.Average() : MedianOf(values), used), used,
                $"{(values.Count == 2 ? "mean" : "median")} of {values.Count}{Standing(more)}", judged);
    }

    private static ExtractComparison Together(List<ExtractResult> ordered, ExtractAgreement agreement, bool more)
    {
        var values = ordered.ConvertAll(extract => extract.Content.Raw!.Value);
        var step = new AcceptabilityStep(
            values.Count, values.Max() - values.Min(), CriticalRange.PublishedFactor(values.Count), CriticalRange.PublishedFactor(values.Count) * agreement.RepeatabilitySd);
        var judged = agreement with
        {
            Compared = step.Results,
            Range = step.Range,
            CriticalRange = step.CriticalRange,
            Outcome = step.Agrees ? AgreementOutcome.Agrees : values.Count == 2 ? Unsettled(more) : AgreementOutcome.Median,
            MoreNeeded = !step.Agrees && values.Count == 2 && more ? 1 : 0,
        };
        if (step.Agrees || values.Count == 2)
        {
            return new(MeanOf(ordered), ordered, $"mean of {values.Count}{(step.Agrees ? "" : Standing(more))}", judged);
        }

        return new(Limited(MedianOf(values), ordered), ordered, $"median of {values.Count}", judged);
    }

    /// <summary>Some results have no number: only a difference that no number could close is a disagreement.</summary>
    private static ExtractComparison Censored(List<ExtractResult> ordered, ExtractAgreement agreement, bool more)
    {
        var gap = Math.Max(0m, ordered.Max(extract => CensoredMean.Lowest(extract.Content)) - ordered.Min(extract => CensoredMean.Highest(extract.Content)));
        var critical = CriticalRange.PublishedFactor(ordered.Count) * agreement.RepeatabilitySd;
        var agrees = gap <= critical;
        var judged = agreement with
        {
            Compared = ordered.Count,
            Range = gap,
            CriticalRange = critical,
            Outcome = agrees ? AgreementOutcome.Agrees : Unsettled(more),
            MoreNeeded = agrees || !more ? 0 : 1,
        };
        return new(MeanOf(ordered), ordered, $"mean of {ordered.Count}{(agrees ? "" : Standing(more))}", judged);
    }

    private static AgreementOutcome Unsettled(bool more) => more ? AgreementOutcome.Open : AgreementOutcome.Unresolved;

    private static string Standing(bool more) => more ? ", disagreement open" : ", disagreement unresolved";

    private static LabResult MeanOf(List<ExtractResult> extracts) => CensoredMean.Of(extracts.ConvertAll(extract => extract.Content));

    private static LabResult Limited(decimal value, List<ExtractResult> used) =>
        LabResult.Of(value, CensoredMean.LargestLimit(used.Select(extract => extract.Content)));

    private static decimal MedianOf(List<decimal> values)
    {
        var sorted = values.Order().ToList();
        return (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2m;
    }
}
