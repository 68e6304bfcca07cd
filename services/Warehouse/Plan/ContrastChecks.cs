using System.Globalization;

namespace LabPipeline.Warehouse.Plan;

/// <summary>What can be wrong with planned contrasts.</summary>
internal static class ContrastChecks
{
    public static IEnumerable<PlanFault> Of(TrialPlan plan) => plan.Contrasts.SelectMany((contrast, index) => Of(plan.Design, contrast, $"contrasts[{index}]"));

    private static IEnumerable<PlanFault> Of(TrialDesign design, PlannedContrast contrast, string path)
    {
        var known = design.Factors.Select(factor => factor.Name).ToList();
        var places = contrast.Factors.Select(name => known.IndexOf(name)).ToList();
        if (places.Count == 0 || places.Contains(-1) || places.Zip(places.Skip(1)).Any(pair => pair.First >= pair.Second))
        {
            return contrast.Factors.Contains("") ? [] :
            [
                new PlanFault($"{path}.factors", $"'{string.Join(", ", contrast.Factors)}'", $"factors of the design, each once and in its order: {string.Join(", ", known)}", "Name the factors whose means are compared."),
            ];
        }

        return [.. UnknownCells([.. places.Select(place => design.Factors[place])], contrast, path), .. Sum(contrast, path)];
    }

    private static IEnumerable<PlanFault> UnknownCells(IReadOnlyList<TrialFactor> factors, PlannedContrast contrast, string path)
    {
        foreach (var cell in contrast.Coefficients.Keys)
        {
            var levels = cell.Split(':');
            if (levels.Length != factors.Count || levels.Zip(factors).Any(pair => !pair.Second.Levels.Contains(pair.First, StringComparer.Ordinal)))
            {
                yield return new PlanFault(
                    $"{path}.coefficients",
                    $"'{cell}'",
                    $"{(factors.Count == 1 ? "a level" : "levels joined by colons")} of {string.Join(", ", factors.Select(factor => factor.Name))}",
                    $"Write it as {string.Join(':', factors.Select(factor => factor.Levels.Count > 0 ? factor.Levels[0] : ""))}, or correct the level.");
            }
        }
    }

    private static IEnumerable<PlanFault> Sum(PlannedContrast contrast, string path)
    {
        var sum = contrast.Coefficients.Values.Sum();
        if (sum != 0)
        {
            yield return new PlanFault(
                $"{path}.coefficients",
                $"coefficients that add to {sum.ToString(CultureInfo.InvariantCulture)}",
                "coefficients that add to 0",
                "Correct them; write thirds as whole numbers (2, -1, -1).");
        }
        else if (contrast.Coefficients.Values.All(coefficient => coefficient == 0))
        {
            yield return new PlanFault($"{path}.coefficients", "no coefficient but 0", "at least two that are not 0", "Name the means that are compared.");
        }
    }
}
