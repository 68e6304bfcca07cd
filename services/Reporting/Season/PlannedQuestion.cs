namespace LabPipeline.Reporting.Season;

/// <summary>A contrast of the trial's plan, ready for the means it compares.</summary>
/// <param name="Name">The question in words.</param>
/// <param name="Term">The term of the means: "clone:nitrogen".</param>
/// <param name="Coefficients">By label of the mean; others count 0.</param>
/// <param name="StatedAt">When the plan first held it.</param>
internal sealed record PlannedQuestion(string Name, string Term, IReadOnlyDictionary<string, double> Coefficients, DateTimeOffset StatedAt)
{
    /// <summary>Sum of the positive coefficients: what an estimate is divided by to be a difference of two weighted means.</summary>
    public double Size => Coefficients.Values.Where(value => value > 0).Sum();
}
