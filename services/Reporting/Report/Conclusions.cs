using System.Globalization;
using LabPipeline.Reporting.Season;
using LabPipeline.Reporting.Season.Keeping;
using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Reporting.Report;

/// <summary>Sentences made from the results. A difference that is not shown is never called equality.</summary>
internal static class Conclusions
{
    public static IEnumerable<string> Answer(ReportContent content)
    {
        var tables = content.Analysis.Keeping.Where(table => table.WhyNone is null && table.Clones.Count > 0).ToList();
        var chosen = tables.Where(table => !table.Limit.HighIsBad).Concat(tables.Where(table => table.Limit.HighIsBad)).Take(2).ToList();
        foreach (var table in chosen)
        {
            yield return $"{KeepingLimits.Describe(table.Limit)}: {Ranking(table.Clones)}.";
        }

        if (chosen.Count == 0)
        {
            yield return $"How long each clone kept cannot be estimated: {content.Analysis.Keeping[0].WhyNone ?? "no clone could be followed through the pulls"}.";
        }

        foreach (var sentence in Effects(content).Take(1))
        {
            yield return sentence;
        }
    }

    public static IEnumerable<string> Keeping(ReportContent content) => content.Analysis.Keeping.Select(table =>
        table.WhyNone is { } why
            ? $"{KeepingLimits.Describe(table.Limit)}: cannot be estimated, {why}."
            : $"{KeepingLimits.Describe(table.Limit)} ({table.Limit.Source}): {Ranking(table.Clones.Count > 0 ? table.Clones : table.Cells)}.");

    public static IEnumerable<string> Effects(ReportContent content) => content.Analysis.Responses
        .Where(one => one.Season is { Analysis.Tests: not null })
        .SelectMany(one => one.Season!.Analysis!.Tests!.Rows.Where(row => row.P is not null && row.Term != "pull").Select(row => (One: one, Row: row)))
        .OrderByDescending(pair => pair.Row.Term.Split(':').Contains("pull"))
        .ThenBy(pair => pair.Row.Term.Split(':').Length)
        .GroupBy(pair => pair.Row.Term)
        .SelectMany(group => Sentences(group.Key, [.. group]));

    public static IEnumerable<string> Reach(ReportContent content)
    {
        var (data, trial) = (content.Data, content.Data.Trial);
        yield return $"One season ({trial.Season}) at one site ({trial.Site}): other years and places may rank the clones otherwise.";
        yield return $"Bays {string.Join(", ", data.Bays.Select(bay => bay.BayCode))} are stores, not treatments: differences between bays cannot be told from differences between the plots kept in them.";
        yield return $"Between pulls means are joined by straight lines, and nothing is said of days before {data.DayOf(data.Pulls[0].PullNo)} or after {data.DayOf(data.Pulls[^1].PullNo)} after harvest.";
        var tests = content.Analysis.Responses.Sum(one => one.Pulls.Sum(pull => pull.Anova?.Rows.Count(row => row.P is not null) ?? 0) + (one.Season?.Analysis?.Tests?.Rows.Count(row => row.P is not null) ?? 0));
        yield return $"The tables hold {tests} tests; at the 5 % level about one in twenty would call a difference where there is none. Questions that were planned come first; read the rest as hints. Beside the tests of each pull, q bounds the share of false claims over the pulls of one line (Benjamini-Hochberg); it does not count the other results.";
        if (trial.IncompleteReason is { } reason)
        {
            yield return $"The plan states that treatments are missing from some blocks: {reason}";
        }
    }

    /// <summary>"KT-131 and KT-104 stayed within it to the last pull (day 237); KT-118 crossed it on day 205 (95 % interval 190 to 221)".</summary>
    public static string Ranking(IReadOnlyList<KeepingTime> times)
    {
        var parts = new List<string>();
        var kept = times.Where(time => time.State == KeepingState.NotReached).ToList();
        if (kept.Count > 0)
        {
            parts.Add($"{Join(kept.Select(time => time.Label))} stayed within it to the last pull (day {kept[0].LastDay})");
        }

        parts.AddRange(times.Where(time => time.State == KeepingState.Crossed).OrderByDescending(time => time.Day)
            .Select(time => $"{time.Label} crossed it on day {NumberText.Fixed(time.Day, 0)} (95 % interval {KeepingText.Interval(time)})"));
        var early = times.Where(time => time.State == KeepingState.OutFromTheStart).ToList();
        if (early.Count > 0)
        {
            parts.Add($"{Join(early.Select(time => time.Label))} lay beyond it at the first pull (day {early[0].FirstDay})");
        }

        return string.Join("; ", parts);
    }

    private static IEnumerable<string> Sentences(string term, IReadOnlyList<(ResponseAnalysis One, AnovaRow Row)> tests)
    {
        var words = new EffectWords(term);
        var shown = tests.Where(test => test.Row.P <= MeansTables.Alpha).ToList();
        if (shown.Count > 0)
        {
            yield return words.Shown(Join(shown.Select(Tested)));
        }

        var open = tests.Where(test => test.Row.P > MeansTables.Alpha).ToList();
        if (!words.IsMainEffect && open.Count > 0)
        {
            yield return words.NotShown(Join(open.Select(Tested)), "");
        }

        foreach (var test in words.IsMainEffect ? open : [])
        {
            yield return words.NotShown(Tested(test), Widest(test.One, term));
        }
    }

    private static string Tested((ResponseAnalysis One, AnovaRow Row) test) => $"{test.One.Response.InText} ({Test(test.Row)})";

    private static string Test(AnovaRow row) => string.Create(CultureInfo.InvariantCulture,
        $"F({row.Df}, {NumberText.Df(row.DenominatorDf)}) = {NumberText.Fixed(row.F, 2)}, {NumberText.PWithName(row.P)}");

    /// <summary>For a main effect, how large a difference the data still allow.</summary>
    private static string Widest(ResponseAnalysis one, string term)
    {
        var means = one.Season!.Analysis!.Means.FirstOrDefault(entry => entry.Term.Name == term);
        if (means is null || means.Term.Variables.Count > 1 || means.Cells.Any(cell => cell.Value is null))
        {
            return "";
        }

        var (low, high) = (means.Cells.MinBy(cell => cell.Value)!, means.Cells.MaxBy(cell => cell.Value)!);
        var difference = one.Scale.Difference(means.Difference(high.Label, low.Label), MeansTables.Alpha);
        var decimals = one.Response.Kind == ResponseScaleKind.Measured ? one.Response.Decimals + 1 : 2;
        return $"; the largest {difference.Meaning}, {high.Label} against {low.Label}, is {NumberText.Fixed(difference.Value, decimals)} (95 % interval {NumberText.Fixed(difference.Low, decimals)} to {NumberText.Fixed(difference.High, decimals)})";
    }

    private static string Join(IEnumerable<string> texts)
    {
        var list = texts.ToList();
        return list.Count < 2 ? string.Concat(list) : $"{string.Join(", ", list.SkipLast(1))} and {list[^1]}";
    }
}
