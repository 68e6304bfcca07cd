using System.Globalization;
using LabPipeline.Science.ControlCharts;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.ControlCharts;

/// <summary>Run rules against F_run_rules.csv (definitions and rates) and F_run_rule_sequences.csv (invented sequences and the rules that fire).</summary>
public sealed class RunRuleTests
{
    /// <summary>Label of the sequence file, id of the definition file, our rule.</summary>
    private static readonly (string Label, string Id, RunRule Rule)[] Labels =
    [
        ("N1 / WE1 / 1-3s", "WE1 = N1 = 1-3s", RunRules.BeyondThree),
        ("W 1-2s warning", "W 1-2s", RunRules.BeyondTwo),
        ("N5 / WE2", "WE2 = N5", RunRules.TwoOfThreeBeyondTwo),
        ("N6 / WE3", "WE3 = N6", RunRules.FourOfFiveBeyondOne),
        ("W 2-2s", "W 2-2s", RunRules.TwoBeyondTwo),
        ("W R-4s (consecutive single controls)", "W R-4s", RunRules.OppositeBeyondTwo),
        ("W 4-1s", "W 4-1s", RunRules.FourBeyondOne),
        ("ISO 7870-2:2013 style: 7 consecutive same side", "ISO b", RunRules.SevenOneSide),
        ("WE4", "WE4", RunRules.EightOneSide),
        ("N2", "N2", RunRules.NineOneSide),
        ("W 10x", "W 10x", RunRules.TenOneSide),
        ("N3", "N3", RunRules.SixSteady),
        ("ISO 7870-2:2013 style: 7 points steadily rising or falling", "ISO c", RunRules.SevenSteady),
        ("N4", "N4", RunRules.FourteenAlternating),
        ("N7", "N7", RunRules.FifteenWithinOne),
        ("N8", "N8", RunRules.EightBeyondOneEitherSide),
    ];

    [Fact]
    public void Evaluate_OnEverySequence_FiresExactlyTheListedRules()
    {
        var rows = ReferenceTable.Load("F_run_rule_sequences.csv").Rows;
        Assert.Equal(14, rows.Count);
        foreach (var row in rows)
        {
            var z = row.Text("z_values").Split(' ').Select(text => decimal.Parse(text, CultureInfo.InvariantCulture)).ToList();

            var fired = RunRules.Evaluate(z, RunRules.All)
                .Select(signal => $"{Labels.Single(label => label.Rule == signal.Rule).Label} @ {signal.Index + 1}");

            Assert.Equal(Expected(row).Order(StringComparer.Ordinal), fired.Order(StringComparer.Ordinal));
        }
    }

    [Fact]
    public void FalseAlarmRates_OfEveryRule_AreTheComputedOnes()
    {
        var rows = ReferenceTable.Load("F_run_rules.csv").Rows;
        foreach (var row in rows.Where(row => row.Text("alpha_per_point_approx_normal") is not "-" and not ""))
        {
            var text = row.Text("alpha_per_point_approx_normal").Replace("about ", "", StringComparison.Ordinal).Split(' ')[0];
            var rate = double.Parse(text, CultureInfo.InvariantCulture);
            var rule = row.Text("id") == "ISO a" ? RunRules.BeyondThree : Labels.Single(label => label.Id == row.Text("id")).Rule;

            // Half a unit of the last digit given.
            var unit = Math.Pow(10, -(text.Length - text.IndexOf('.', StringComparison.Ordinal) - 1));
            Assert.Equal(rate, rule.FalseAlarmRate, 0.51 * unit);
        }
    }

    [Fact]
    public void FalseAlarmRates_OnSimulatedPoints_AreSeen()
    {
        // 60,000 windows of ten points without overlap: standard error of a rate r is sqrt(r/60000); four are allowed.
        const int Windows = 60_000;
        var random = new Random(1956);
        RunRule[] rules = [RunRules.BeyondThree, RunRules.TwoBeyondTwo, RunRules.OppositeBeyondTwo, RunRules.FourBeyondOne, RunRules.EightOneSide, RunRules.SixSteady];
        var counts = rules.ToDictionary(rule => rule, _ => 0);
        for (var trial = 0; trial < Windows; trial++)
        {
            var window = Enumerable.Range(0, 10).Select(_ => (decimal)Gauss(random)).ToList();
            foreach (var rule in rules)
            {
                counts[rule] += rule.FiresAt(window, 9) ? 1 : 0;
            }
        }

        Assert.All(rules, rule => Assert.Equal(rule.FalseAlarmRate, (double)counts[rule] / Windows, 4 * Math.Sqrt(rule.FalseAlarmRate / Windows)));
    }

    [Fact]
    public void Rules_Names_AreStableAndUnique()
    {
        Assert.Equal(RunRules.All.Count, RunRules.All.Select(rule => rule.Name).Distinct().Count());
        Assert.Equal(RunRules.All.Count, Labels.Length);
        Assert.All(RunRules.All, rule => Assert.Same(rule, RunRules.Named(rule.Name)));
        Assert.Contains("beyond_3s", Assert.Throws<ArgumentException>(() => RunRules.Named("none")).Message, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Expected(ReferenceRow row)
    {
        foreach (var part in row.Text("rules_fired_at_1_based_index_of_last_point").Split("; ").Where(part => part != "(none)"))
        {
            var at = part.Split(" @ ");
            var label = Labels.Select(known => known.Label)
                .Where(known => at[0] == known || at[0].StartsWith(known + ":", StringComparison.Ordinal)).MaxBy(known => known.Length);
            foreach (var index in at[1].Split(','))
            {
                yield return $"{label} @ {index}";
            }
        }
    }

    private static double Gauss(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
