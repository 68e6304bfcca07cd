using LabPipeline.Quality.Results;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Rules;

/// <summary>A result that stands to the others as if a usual dilution had been forgotten or entered twice.</summary>
/// <param name="Agreement">The comparison it was found in.</param>
/// <param name="Extract">The extract that stands apart; with two extracts, the higher of them.</param>
/// <param name="Ratio">Larger over smaller.</param>
/// <param name="Factor">The dilution it looks like.</param>
/// <param name="Tolerance">Relative reach around the factor.</param>
internal sealed record DilutionSlip(ExtractAgreement Agreement, string Extract, decimal Ratio, decimal Factor, decimal Tolerance)
{
    /// <summary>The slips that explain disagreements of one sample, by quantity.</summary>
    /// <remarks>
    /// Two results x and k x repeat with s_r of their own levels, so their ratio has the relative standard deviation
    /// sqrt((s1/x1)² + (s2/x2)²); within 1.96 of these around k the ratio looks like k. Where one sugar shows a slip of an extract, the other
    /// sugar of that extract needs only to be compatible with the same factor.
    /// </remarks>
    public static IReadOnlyDictionary<Quantity, DilutionSlip> FindAll(IReadOnlyList<ExtractAgreement> agreements)
    {
        var disagreeing = agreements.Where(CanBeJudged).ToList();
        var sure = disagreeing.Select(agreement => Find(agreement, RuleDefaults.DilutionFactors, RuleDefaults.WidestDilutionReach)).OfType<DilutionSlip>().ToList();
        var alike = disagreeing.Where(agreement => sure.TrueForAll(slip => slip.Agreement != agreement))
            .Select(agreement => sure.Select(slip => Find(agreement, [slip.Factor], decimal.MaxValue) is { } other && other.Extract == slip.Extract ? other : null)
                .FirstOrDefault(other => other is not null))
            .OfType<DilutionSlip>();
        return sure.Concat(alike).ToDictionary(slip => slip.Agreement.Quantity);
    }

    private static bool CanBeJudged(ExtractAgreement agreement) =>
        agreement.Disagrees && agreement.Extracts.Take(agreement.Compared).All(extract => extract.Content.Raw is > 0m);

    private static DilutionSlip? Find(ExtractAgreement agreement, IReadOnlyList<decimal> factors, decimal widest)
    {
        var sorted = agreement.Extracts.Take(agreement.Compared).OrderBy(extract => extract.Content.Raw!.Value).ToList();
        return Match(agreement, sorted[^1], Median(sorted[..^1]), factors, widest) ?? Match(agreement, sorted[0], Median(sorted[1..]), factors, widest);
    }

    private static DilutionSlip? Match(ExtractAgreement agreement, ExtractResult apart, decimal others, IReadOnlyList<decimal> factors, decimal widest)
    {
        var value = apart.Content.Raw!.Value;
        var ratio = Math.Max(value, others) / Math.Min(value, others);
        var (first, second) = ((double)(agreement.Repeatability.SdAt(value) / value), (double)(agreement.Repeatability.SdAt(others) / others));
        var tolerance = RuleDefaults.DilutionReach * (decimal)double.Hypot(first, second);
        return tolerance > widest
            ? null
            : factors.Where(factor => Math.Abs((ratio / factor) - 1m) <= tolerance)
                .Select(factor => new DilutionSlip(agreement, apart.Extract, ratio, factor, tolerance))
                .FirstOrDefault();
    }

    private static decimal Median(List<ExtractResult> sorted) =>
        (sorted[(sorted.Count - 1) / 2].Content.Raw!.Value + sorted[sorted.Count / 2].Content.Raw!.Value) / 2m;
}
