using System.Text.Json;
using System.Text.RegularExpressions;
using LabPipeline.Reporting.Season.Data;
using LabPipeline.Reporting.Season.Keeping;
using LabPipeline.Science.Gravity;

namespace LabPipeline.Reporting.Report;

/// <summary>Methods, filled from the plan and from what the files were read with.</summary>
internal static partial class MethodsSection
{
    public static void Write(HtmlPage page, ReportContent content)
    {
        page.Heading(2, "methods", "1 Methods").Heading(3, "methods-trial", "Trial");
        Trial(page, content);
        Pulls(page, content);
        Measurements(page, content);
        Statistics(page, content);
    }

    private static void Trial(HtmlPage page, ReportContent content)
    {
        var (data, trial, model) = (content.Data, content.Data.Trial, content.Analysis.Model);
        page.Facts(
        [
            ("Design", model.Statement()),
            .. data.Factors().Select(factor => (Name: $"Factor {factor.Key}", Value: string.Join(", ", factor.Select(level => level.Level)) + (factor.First().Unit is { } unit ? $" {unit}" : ""))),
            ("Standard clone", trial.StandardClone),
            ("Blocks, plots", $"{data.Plots.Select(plot => plot.Block).Distinct().Count()} blocks, {data.Plots.Count} plots"),
            ("Harvested", NumberText.Date(trial.HarvestedOn)),
            ("Bays", string.Join(", ", data.Bays.Select(bay => bay.SetPointC is { } set ? $"{bay.BayCode} at {NumberText.Fixed(set, 1)} °C (set point; no temperature log is kept here)" : $"{bay.BayCode}, no set point stated"))),
            ("One sample", $"{trial.TubersPerSample} tubers, {trial.SlicesPerTuber} slices a tuber, {trial.ExtractsPerSample} extracts planned"),
            ("Randomisation", $"{Drawn(data)}; the plot map is the plan's list of plots (document named on the first page)"),
        ]);
        var map = new HtmlTable("Plot map", "block", "plots in order of their codes") { Class = "text" };
        foreach (var block in data.Plots.GroupBy(plot => plot.Block).OrderBy(block => block.Key, StringComparer.Ordinal))
        {
            map.RowOfHtml([HtmlPage.Encode(block.Key), string.Join("; ", block.Select(plot => $"<span class=\"whole\">{HtmlPage.Encode($"{plot.PlotCode} {string.Join("/", data.Factors().Select(factor => plot.Levels[factor.Key]))}")}</span>"))]);
        }

        page.Table(map);
    }

    private static void Pulls(HtmlPage page, ReportContent content)
    {
        var table = new HtmlTable("Pulls", "pull", "planned for", "days after harvest", "measured from", "measured to", "days from the planned date");
        foreach (var pull in content.Data.Pulls)
        {
            var samples = content.Data.Samples.Where(sample => sample.PullNo == pull.PullNo && sample.FirstMeasured is not null).ToList();
            var (first, last) = (samples.Min(sample => sample.FirstMeasured), samples.Max(sample => sample.LastMeasured));
            table.Row(
                NumberText.Whole(pull.PullNo),
                NumberText.Date(pull.DueOn),
                NumberText.Whole(content.Data.DayOf(pull.PullNo)),
                first is { } from ? NumberText.Date(Local(from)) : "not measured",
                last is { } to ? NumberText.Date(Local(to)) : NumberText.None,
                first is { } start && last is { } end ? $"{NumberText.Fixed((double)(Local(start).DayNumber - pull.DueOn.DayNumber), 0)} to {NumberText.Fixed((double)(Local(end).DayNumber - pull.DueOn.DayNumber), 0)}" : NumberText.None);
        }

        page.Heading(3, "methods-pulls", "Pulls").Table(table).Note($"Bench dates in the time zone of the trial, {content.Data.Trial.TimeZone}. Time in the models is days from harvest to the planned date of the pull.");

        DateOnly Local(DateTimeOffset at) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, TimeZoneInfo.FindSystemTimeZoneById(content.Data.Trial.TimeZone)).DateTime);
    }

    private static void Measurements(HtmlPage page, ReportContent content)
    {
        var trial = content.Data.Trial;
        var relation = SolidsRelation.All.FirstOrDefault(known => known.Name == trial.DryMatterRelation);
        var methods = new HtmlTable("Methods and profiles the files of this season were read with", "kind", "method", "as stated", "profile", "files") { Class = "text" };
        foreach (var group in content.Data.Files.GroupBy(file => (file.Kind, file.Method, file.MethodFacts, file.Profile, file.ProfileVersion)).OrderBy(group => group.Key.Kind, StringComparer.Ordinal).ThenBy(group => group.Key.Profile, StringComparer.Ordinal))
        {
            methods.Row(group.Key.Kind, group.Key.Method ?? "not stated", Stated(group.Key.MethodFacts), $"{group.Key.Profile} version {group.Key.ProfileVersion}", NumberText.Whole(group.Count()));
        }

        page.Heading(3, "methods-measurements", "Measurements").Table(methods).Facts(
        [
            ("Sugars", "c V DF / m of each extract in mg/g fresh weight; sucrose = 1.9000 x (total - free glucose); extracts combined as ISO 5725-6 says (counts under Data quality)"),
            ("Dry matter", relation is null ? trial.DryMatterRelation : $"{trial.DryMatterRelation}: {relation.Source}"),
            ("Dark chip", $"Hunter L below {NumberText.Fixed(trial.DarkBelowHunterL, 1)}"),
            ("Severe stem-end defect", $"score {trial.SevereFromScore} or above, of 5"),
            ("Undesirable chip", "a chip with at least one defect; several on one chip count once"),
        ]);
    }

    private static void Statistics(HtmlPage page, ReportContent content)
    {
        var chips = content.Data.Trial.TubersPerSample * content.Data.Trial.SlicesPerTuber;
        page.Heading(3, "methods-statistics", "Statistics").Facts(
        [
            ("Unit of analysis", "the mean of a plot at a pull; tubers, slices and readings are subsamples and add no degrees of freedom"),
            ("Model", $"{content.Analysis.Model.Statement()}, as the plan records it"),
            ("Each pull", "analysis of variance by least squares (error strata for a split-plot; where plots are missing, marginal sums of squares, in a split-plot REML with Kenward-Roger degrees of freedom); means are adjusted, so a missing plot does not favour its treatment"),
            ("Whole season", "pulls as repeated measures of the same plots: mixed model by REML with Kenward-Roger degrees of freedom, covariance between pulls chosen by AIC among compound symmetry, exponential, and plot plus exponential; where complete also the split-plot in time with Greenhouse-Geisser and Huynh-Feldt corrections"),
            ("Scales", $"sugars: natural logarithm, back-transformed to geometric means and ratios; shares of chips: empirical logit with 0.5 / ({chips} + 1) drawn in at each end, back-transformed to shares; all else as measured. Settled before the data"),
            .. Planned(content),
            ("Comparisons", "planned: every clone against the standard (Dunnett, two-sided) and trends over quantitative factors (orthogonal polynomials); all pairs by Tukey. Means with a common letter are not shown to differ; that does not make them equal. Tests repeated at every pull carry q beside p: Benjamini-Hochberg over the pulls of one term of one result. All at the 5 % level, intervals of 95 %"),
            ("Keeping time", "day on which the mean of the whole-season model first passes a limit, straight lines between pulls on the scale of analysis; interval: days whose 95 % confidence band holds the limit (inverse prediction); censored at the first and last pull, never extrapolated"),
            ("Below the quantitation limit", "such a value enters as the limit and is counted beside each table; a pull that lies wholly below is not analysed"),
            ("Limits", string.Join("; ", content.Analysis.Keeping.Select(table => $"{KeepingLimits.Describe(table.Limit)} ({table.Limit.Source})"))),
        ]);
        if (content.Analysis.Model.SingleLevel.Count > 0)
        {
            page.Note($"Only one level of {string.Join(", ", content.Analysis.Model.SingleLevel)}: nothing can be compared within it, and the model leaves it out.");
        }
    }

    /// <summary>The change log holds the seed of a layout the program has drawn.</summary>
    private static string Drawn(SeasonData data) => data.Changes.Select(change => SeedText().Match(change.Why)).FirstOrDefault(match => match.Success) is { } match
        ? $"the layout was {match.Value} and can be drawn again"
        : "the seed is not recorded in the plan";

    [GeneratedRegex(@"drawn with seed \d+")]
    private static partial Regex SeedText();

    /// <summary>The trial's own questions, and whether they were asked before anything was measured.</summary>
    private static IEnumerable<(string Name, string Value)> Planned(ReportContent content)
    {
        var first = content.Data.Samples.Min(sample => sample.FirstMeasured);
        var questions = content.Analysis.Model.Questions;
        return questions.Count == 0
            ? [("Planned contrasts", "the plan states none of its own")]
            : questions.Select(question => ($"Planned contrast {question.Name}",
                $"{question.Term.Replace(":", " x ", StringComparison.Ordinal)}: {string.Join(", ", question.Coefficients.Select(pair => FormattableString.Invariant($"{pair.Value:0.###} x {pair.Key.Replace(":", "/", StringComparison.Ordinal)}")))}; stated {NumberText.Instant(question.StatedAt)}, {(first is null || question.StatedAt <= first ? "before" : "after")} the first measurement; t test with the error of these means, not adjusted for other questions"));
    }

    private static string Stated(string? facts) => facts is null ? ""
        : string.Join("; ", JsonSerializer.Deserialize<Dictionary<string, string>>(facts)!.OrderBy(fact => fact.Key, StringComparer.Ordinal).Select(fact => $"{fact.Key}: {fact.Value}"));
}
