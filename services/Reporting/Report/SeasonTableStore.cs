using LabPipeline.Reporting.Season;
using LabPipeline.Reporting.Season.Data;
using LabPipeline.Warehouse;

namespace LabPipeline.Reporting.Report;

/// <summary>The tables of one response, for the console.</summary>
public sealed class SeasonTableStore
{
    /// <summary>Names of what can be asked for.</summary>
    public static IReadOnlyList<string> Quantities { get; } = [.. ResponseCatalogue.All.Select(response => response.Quantity.Name)];

    /// <param name="session">Where to read.</param>
    /// <param name="trialCode">The trial.</param>
    /// <param name="quantity">One of <see cref="Quantities"/>.</param>
    /// <param name="pull">One pull, or null for all.</param>
    /// <returns>The tables; none where the response was not measured; null where no plan of the trial is loaded.</returns>
    public static async Task<IReadOnlyList<PrintedTable>?> ListAsync(WarehouseSession session, string trialCode, string quantity, int? pull)
    {
        ArgumentNullException.ThrowIfNull(session);
        if (await SeasonDataStore.FindAsync(session, trialCode, DateTimeOffset.UnixEpoch).ConfigureAwait(false) is not { } data)
        {
            return null;
        }

        var response = ResponseCatalogue.All.Single(one => one.Quantity.Name == quantity);
        return TrialAnalyser.Analyse(data, response) is { } analysis
            ? [.. analysis.Pulls.Where(one => pull is null || one.PullNo == pull).SelectMany(Tables)]
            : [];
    }

    private static IEnumerable<PrintedTable> Tables(PullTables pull)
    {
        var title = $"Pull {pull.PullNo}, day {pull.Day}, {pull.Plots} plots";
        if (pull.Anova is null)
        {
            yield return new PrintedTable(title, ["why not"], [[pull.WhyNone ?? ""]]);
            yield break;
        }

        yield return new PrintedTable(title, ["stratum", "term", "df", "sum of squares", "mean square", "F", "p"],
        [
            .. pull.Anova.Rows.Select(row => (IReadOnlyList<string>)[row.Stratum, row.Term, NumberText.Whole(row.Df), NumberText.Significant(row.SumOfSquares, 6), NumberText.Significant(row.MeanSquare, 6),
                row.NotTested ?? NumberText.Significant(row.F, 5), NumberText.P(row.P)]),
            .. pull.Anova.NotEstimable.Select(lost => (IReadOnlyList<string>)["", lost.Term, "", "", "", "", lost.Reason]),
        ]);
        if (pull.Planned.Count > 0)
        {
            yield return new PrintedTable("Planned contrasts, on the scale of analysis", ["question", "estimate", "SE", "df", "t", "p", "95 % interval"], [.. pull.Planned.Select(Planned)]);
        }

        foreach (var means in pull.Means)
        {
            var precision = means.Precision is { } known
                ? $"SED {NumberText.Significant(known.LargestSed, 4)} on {NumberText.Df(known.Df)} df, LSD {NumberText.Significant(known.Lsd, 4)}, HSD {NumberText.Significant(known.Hsd, 4)}"
                : means.Reason ?? "";
            yield return new PrintedTable($"{means.Term}: {precision}", ["level", "plots", "mean", "on the scale of analysis", "letters"],
                [.. means.Rows.Select(row => (IReadOnlyList<string>)[row.Label, NumberText.Whole(row.N), NumberText.Significant(row.Back, 5), NumberText.Significant(row.OnScale, 5), row.Letters])]);
        }
    }

    private static IReadOnlyList<string> Planned(PlannedAnswer answer) => answer.Estimate is { } found
        ? [answer.Question.Name, NumberText.Significant(found.Estimate, 5), NumberText.Significant(found.StandardError, 5), NumberText.Df(found.Df), NumberText.Significant(found.T, 5), NumberText.Significant(found.P, 4),
            $"{NumberText.Significant(found.Low, 5)} to {NumberText.Significant(found.High, 5)}"]
        : [answer.Question.Name, "not estimable: " + answer.WhyNone, "", "", "", "", ""];
}
