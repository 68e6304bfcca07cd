using System.Globalization;

namespace LabPipeline.Warehouse.Plan;

/// <summary>What can be wrong with the design and its factors.</summary>
internal static class DesignChecks
{
    private const int MostTreatmentLength = 200;

    public static IEnumerable<PlanFault> Of(TrialPlan plan) =>
    [
        .. OfKind(plan.Design),
        .. plan.Design.Factors.SelectMany(OfFactor),
        .. OfClone(plan),
        .. OfTreatments(plan.Design),
    ];

    private static IEnumerable<PlanFault> OfKind(TrialDesign design)
    {
        var count = design.Factors.Count;
        var fits = design.Kind == DesignKind.Rcbd ? count == 1 : count >= 2;
        if (count > 0 && !fits)
        {
            yield return new PlanFault(
                "design.factors",
                count == 1 ? "1 factor" : $"{count} factors",
                design.Kind == DesignKind.Rcbd ? "1 for an rcbd" : $"2 or more for a {DesignNames.Of(design.Kind)}",
                "Name the design that fits the factors.");
        }

        if (design.Kind == DesignKind.SplitPlot && design.MainPlotFactor is null)
        {
            yield return new PlanFault("design.mainPlot", "nothing", "the factor on main plots", "Name the factor that was applied to whole main plots.");
        }

        if (design.Kind != DesignKind.SplitPlot && design.MainPlotFactor is not null)
        {
            yield return new PlanFault("design.mainPlot", $"'{design.MainPlotFactor}'", $"nothing for a {DesignNames.Of(design.Kind)}", "Remove it, or name the design split-plot.");
        }

        if (design.MainPlotFactor is { Length: > 0 } name && design.Factors.All(factor => factor.Name != name))
        {
            yield return new PlanFault("design.mainPlot", $"'{name}'", "the name of one of the factors", "Correct the name.");
        }
    }

    private static IEnumerable<PlanFault> OfFactor(TrialFactor factor, int index)
    {
        if (PlotsTable.Reserved.Contains(factor.Name, StringComparer.Ordinal))
        {
            yield return new PlanFault($"design.factors[{index}].name", $"'{factor.Name}'", $"another name than {string.Join(", ", PlotsTable.Reserved)}", "Rename the factor.");
        }

        if (factor.Levels.Count == 1)
        {
            yield return new PlanFault($"design.factors[{index}].levels", "1 level", "2 or more", "Add the other levels or remove the factor.");
        }

        foreach (var level in factor.Levels.Where(level => factor.Unit is not null && level.Length > 0 && !IsNumber(level)))
        {
            yield return new PlanFault($"design.factors[{index}].levels", $"'{level}'", $"a number, as the factor has the unit {factor.Unit}", "Write the number alone, with a decimal point, or remove the unit.");
        }
    }

    private static IEnumerable<PlanFault> OfClone(TrialPlan plan)
    {
        var name = plan.Design.CloneFactor;
        var clones = plan.Design.Factors.FirstOrDefault(factor => factor.Name == name);
        if (name.Length > 0 && plan.Design.Factors.Count > 0 && clones is null)
        {
            yield return new PlanFault("design.clone", $"'{name}'", "the name of the factor whose levels are the clones", "Correct the name.");
        }

        var standard = plan.Rules.StandardClone;
        if (standard.Length > 0 && clones is not null && !clones.Levels.Contains(standard, StringComparer.Ordinal))
        {
            yield return new PlanFault("results.standardClone", $"'{standard}'", $"one of {string.Join(", ", clones.Levels)}", "Name a clone of this trial.");
        }
    }

    private static IEnumerable<PlanFault> OfTreatments(TrialDesign design)
    {
        var longest = string.Join("; ", design.Factors
            .Where(factor => factor.Name != design.CloneFactor && factor.Levels.Count > 0)
            .Select(factor => factor.Describe(factor.Levels.MaxBy(level => level.Length)!)));
        if (longest.Length > MostTreatmentLength)
        {
            yield return new PlanFault(
                "design.factors", $"a treatment of {longest.Length} characters ({longest[..40]}…)", $"at most {MostTreatmentLength}", "Shorten names and levels.");
        }
    }

    private static bool IsNumber(string level) =>
        decimal.TryParse(level, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out _);
}
