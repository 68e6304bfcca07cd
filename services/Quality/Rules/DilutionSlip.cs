using LabPipeline.Quality.Results;

namespace LabPipeline.Quality.Rules;

/// <summary>A result that stands to the others as if a usual dilution had been forgotten or entered twice.</summary>
/// <param name="Extract">The extract that stands apart; with two extracts, the higher of them.</param>
/// <param name="Ratio">Larger over smaller.</param>
/// <param name="Factor">The dilution it looks like.</param>
/// <param name="Tolerance">Relative reach around the factor.</param>
internal sealed record DilutionSlip(string Extract, decimal Ratio, decimal Factor, decimal Tolerance)
{
    /// <summary>The slip that explains a disagreement, or null.</summary>
    /// <remarks>
    /// Two results x and k x repeat with s_r of their own levels, so their ratio has the relative standard deviation
    /// sqrt((s1/x1)² + (s2/x2)²); within 1.96 of these around k the ratio looks like k.
    /// </remarks>
    public static DilutionSlip? Find(ExtractAgreement agreement)
    {
        var values = agreement.Extracts.Take(agreement.Compared).ToList();
        if (!agreement.Disagrees || values.Exists(extract => extract.Content.Raw is not > 0m))
        {
            return null;
        }

        var sorted = values.OrderBy(extract => extract.Content.Raw!.Value).ToList();
        return Match(agreement, sorted[^1], Median(sorted[..^1])) ?? Match(agreement, sorted[0], Median(sorted[1..]));
    }

    private static DilutionSlip? Match(ExtractAgreement agreement, ExtractResult apart, decimal others)
    {
        var value = apart.Content.Raw!.Value;
        var ratio = Math.Max(value, others) / Math.Min(value, others);
        var (first, second) = ((double)(agreement.Repeatability.SdAt(value) / value), (double)(agreement.Repeatability.SdAt(others) / others));
        var tolerance = RuleDefaults.DilutionReach * (decimal)double.Hypot(first, second);
        if (tolerance > RuleDefaults.WidestDilutionReach)
        {
            return null;
        }

        foreach (var factor in RuleDefaults.DilutionFactors)
        {
            if (Math.Abs((ratio / factor) - 1m) <= tolerance)
            {
                return new DilutionSlip(apart.Extract, ratio, factor, tolerance);
            }
        }

        return null;
    }

    private static decimal Median(List<ExtractResult> sorted) =>
        (sorted[(sorted.Count - 1) / 2].Content.Raw!.Value + sorted[sorted.Count / 2].Content.Raw!.Value) / 2m;
}
