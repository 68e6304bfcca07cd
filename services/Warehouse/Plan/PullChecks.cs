using System.Globalization;

namespace LabPipeline.Warehouse.Plan;

/// <summary>Whether pulls follow each other and their windows make sense.</summary>
internal static class PullChecks
{
    public static IEnumerable<PlanFault> Of(TrialPlan plan) =>
    [
        .. plan.Pulls.SelectMany((pull, index) => OfWindow(plan, pull, $"pulls[{index}]")),
        .. plan.Pulls.Zip(plan.Pulls.Skip(1)).SelectMany((pair, index) => OfOrder(pair.First, pair.Second, $"pulls[{index + 1}]")),
    ];

    private static IEnumerable<PlanFault> OfWindow(TrialPlan plan, TrialPull pull, string path)
    {
        if (pull.OpensOn == default || pull.ClosesOn == default)
        {
            yield break;
        }

        if (pull.ClosesOn < pull.OpensOn)
        {
            yield return new PlanFault($"{path}.closes", Shown(pull.ClosesOn), $"{Shown(pull.OpensOn)} or later, when the window opens", "Correct the window.");
        }
        else if (pull.DueOn != default && (pull.DueOn < pull.OpensOn || pull.DueOn > pull.ClosesOn))
        {
            yield return new PlanFault($"{path}.due", Shown(pull.DueOn), $"a day from {Shown(pull.OpensOn)} to {Shown(pull.ClosesOn)}, its window", "Correct the day or the window.");
        }

        if (plan.HarvestedOn != default && pull.OpensOn < plan.HarvestedOn)
        {
            yield return new PlanFault($"{path}.opens", Shown(pull.OpensOn), $"{Shown(plan.HarvestedOn)} or later, the day of harvest", "Correct the window or trial.harvestedOn.");
        }
    }

    private static IEnumerable<PlanFault> OfOrder(TrialPull before, TrialPull pull, string path)
    {
        if (before.Number > 0 && pull.Number > 0 && pull.Number <= before.Number)
        {
            yield return new PlanFault(
                $"{path}.number",
                pull.Number.ToString(CultureInfo.InvariantCulture),
                $"more than {before.Number}, the pull before it",
                "List pulls in order, each number once.");
        }

        if (before.ClosesOn != default && pull.OpensOn != default && pull.OpensOn <= before.ClosesOn)
        {
            yield return new PlanFault(
                $"{path}.opens", Shown(pull.OpensOn), $"a day after {Shown(before.ClosesOn)}, when pull {before.Number} closes", "Windows must not overlap: a reading belongs to one pull.");
        }
    }

    private static string Shown(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
