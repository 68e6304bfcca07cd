using System.Buffers;
using System.Globalization;
using LabPipeline.Science.Gravity;

namespace LabPipeline.Warehouse.Plan;

/// <summary>What can be wrong with the trial's own facts.</summary>
internal static class TrialChecks
{
    private static readonly SearchValues<char> MarkCharacters = SearchValues.Create("0123456789ABCDEFGHJKLMNPRSTUVWXYZ");

    public static IEnumerable<PlanFault> Of(TrialPlan plan)
    {
        if (plan.Code.Length > 0 && !plan.Code.All(character => char.IsAsciiLetterOrDigit(character) || character == '-'))
        {
            yield return new PlanFault("trial.code", $"'{plan.Code}'", "letters A-Z, digits and hyphens", "Choose a code that can stand in file names.");
        }

        if (plan.Mark.Length > 0 && (plan.Mark.Length is < 2 or > 3 || plan.Mark.AsSpan().ContainsAnyExcept(MarkCharacters)))
        {
            yield return new PlanFault(
                "trial.mark", $"'{plan.Mark}'", "2 or 3 characters from A-Z and 0-9 without I, O, Q", "Choose a mark that people cannot misread on a label.");
        }

        if (plan.TimeZone.Length > 0 && !IsIanaZone(plan.TimeZone))
        {
            yield return new PlanFault("trial.timeZone", $"'{plan.TimeZone}'", "the IANA name of a time zone, such as America/Chicago", "Correct the name.");
        }

        if (plan.HarvestedOn != default && plan.Season != 0 && plan.HarvestedOn.Year - plan.Season is < 0 or > 1)
        {
            yield return new PlanFault(
                "trial.harvestedOn",
                plan.HarvestedOn.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                $"a day in {plan.Season} or {plan.Season + 1}, the season and the year after",
                "Correct the date or the season.");
        }

        var relation = plan.Rules.DryMatterRelation;
        var relations = SolidsRelation.All.Where(known => known.Content == Solids.DryMatter).Select(known => known.Name).ToList();
        if (relation.Length > 0 && !relations.Contains(relation, StringComparer.Ordinal))
        {
            yield return new PlanFault("results.dryMatterRelation", $"'{relation}'", $"one of {string.Join(", ", relations)}", "Name one of these relations.");
        }
    }

    private static bool IsIanaZone(string name) =>
        TimeZoneInfo.TryFindSystemTimeZoneById(name, out var zone) && zone.HasIanaId && string.Equals(zone.Id, name, StringComparison.Ordinal);
}
