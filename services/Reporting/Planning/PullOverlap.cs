using System.Globalization;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Planning;

/// <summary>Two pulls of different trials that are open on the same days. Pulls of one trial never are: a plan with such windows is refused.</summary>
public sealed record PullOverlap(string FirstTrial, int FirstPull, string SecondTrial, int SecondPull, DateOnly From, DateOnly To)
{
    /// <summary>One sentence for the person who plans.</summary>
    public string Explanation => string.Create(
        CultureInfo.InvariantCulture,
        $"Two pulls are open at once from {From:yyyy-MM-dd} to {To:yyyy-MM-dd}: pull {FirstPull} of {FirstTrial} and pull {SecondPull} of {SecondTrial}. Move one, or keep their bags, racks and fry batches apart.");

    /// <summary>Every such pair, by day.</summary>
    public static IReadOnlyList<PullOverlap> Of(IReadOnlyList<TrialPlan> plans)
    {
        ArgumentNullException.ThrowIfNull(plans);
        return
        [
            .. plans.SelectMany((first, index) => plans.Skip(index + 1).SelectMany(second => Between(first, second)))
                .OrderBy(overlap => overlap.From).ThenBy(overlap => overlap.FirstTrial, StringComparer.Ordinal),
        ];
    }

    private static IEnumerable<PullOverlap> Between(TrialPlan first, TrialPlan second) =>
        from one in first.Pulls
        from other in second.Pulls
        let start = one.OpensOn > other.OpensOn ? one.OpensOn : other.OpensOn
        let end = one.ClosesOn < other.ClosesOn ? one.ClosesOn : other.ClosesOn
        where start <= end
        select new PullOverlap(first.Code, one.Number, second.Code, other.Number, start, end);
}
