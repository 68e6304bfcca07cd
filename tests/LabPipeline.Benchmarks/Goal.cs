namespace LabPipeline.Benchmarks;

/// <summary>A number to reach, and what was measured.</summary>
/// <param name="What">What was measured, with its unit.</param>
/// <param name="Measured">The median.</param>
/// <param name="Wanted">The number to reach.</param>
/// <param name="AtMost">Whether less is better.</param>
/// <param name="Slack">By which part of it the goal may be missed before the run fails: ratios of the same programs differ by so much from run to run on a shared machine.</param>
internal sealed record Goal(string What, double Measured, double Wanted, bool AtMost = false, double Slack = 0.15)
{
    private bool IsMet => AtMost ? Measured <= Wanted : Measured >= Wanted;

    private bool IsNear => AtMost ? Measured <= Wanted * (1 + Slack) : Measured >= Wanted * (1 - Slack);

    /// <returns>The exit code: 0 when every goal is met or missed by no more than its slack.</returns>
    public static int Report(IReadOnlyList<Goal> goals)
    {
        foreach (var goal in goals)
        {
            var bound = goal.AtMost ? "at most" : "at least";
            var verdict = goal.IsMet ? "met" : goal.IsNear ? "missed within the slack" : "MISSED";
            Figures.Print($"{goal.What,-68} {goal.Measured,8:0.00}   goal {bound} {goal.Wanted:0.##}, slack {goal.Slack:P0}: {verdict}");
        }

        Figures.PrintLoad();
        return goals.All(goal => goal.IsNear) ? 0 : 1;
    }
}
