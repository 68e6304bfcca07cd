using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using LabPipeline.Science.Repeatability;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Repeatability;

/// <summary>The procedure of ISO 5725-6:1994, 5.2 (from memory) against E_decision_examples.csv, and what must hold for any results.</summary>
public sealed class AcceptabilityCheckTests
{
    [Fact]
    public void Decide_OnEveryExample_TakesTheSameSteps()
    {
        var rows = ReferenceTable.Load("E_decision_examples.csv").Rows;
        Assert.Equal(7, rows.Count);
        foreach (var row in rows)
        {
            var decision = Check(row).Decide(Results(row));

            Assert.Equal(row.Text("outcome"), decision.Rule);
            Assert.Equal(row.Text("steps").Split(" ; "), decision.Steps.Select(Describe));
            if (row.Has("reported_value"))
            {
                Assert.Equal(row.Exact("reported_value"), decimal.Round(decision.FinalResult!.Value, 6));
            }
            else
            {
                Assert.Null(decision.FinalResult);
                Assert.Equal(AcceptabilityOutcome.ObtainMore, decision.Outcome);
            }
        }
    }

    [Theory]
    [InlineData(RepeatCost.Inexpensive)]
    [InlineData(RepeatCost.Expensive)]
    public void Decide_WhenRangeEqualsTheLimit_Agrees(RepeatCost cost)
    {
        // 2.8 x 0.002 = 0.0056 has no exact double; 0.0556 - 0.05 must not exceed it.
        var decision = new AcceptabilityCheck(0.002m, cost).Decide([0.05m, 0.0556m]);

        Assert.Equal(AcceptabilityOutcome.Mean, decision.Outcome);
        Assert.Equal("mean of 2", decision.Rule);
        Assert.Equal(0.0528m, decision.FinalResult);
        Assert.Equal(AcceptabilityOutcome.ObtainMore, new AcceptabilityCheck(0.002m, cost).Decide([0.05m, 0.0556000001m]).Outcome);
    }

    [Fact]
    public void Decide_WhenNoFourthCanBeHad_TakesTheMiddleOfThree()
    {
        var check = new AcceptabilityCheck(0.002m, RepeatCost.Expensive);

        var decision = check.Decide([0.05m, 0.0562m, 0.049m], moreAvailable: false);

        Assert.Equal((AcceptabilityOutcome.Median, 0.05m, "median of 3"), (decision.Outcome, decision.FinalResult!.Value, decision.Rule));
    }

    [Theory]
    [InlineData(RepeatCost.Expensive, 2)]
    [InlineData(RepeatCost.Inexpensive, 2)]
    [InlineData(RepeatCost.Inexpensive, 3)]
    public void Decide_WhenNoRuleApplies_GivesNoResult(RepeatCost cost, int count)
    {
        var decision = new AcceptabilityCheck(0.002m, cost).Decide([.. new[] { 0.05m, 0.0562m, 0.053m }.Take(count)], moreAvailable: false);

        Assert.Equal(AcceptabilityOutcome.Unresolved, decision.Outcome);
        Assert.Null(decision.FinalResult);
    }

    [Fact]
    public void Decide_WhenInexpensiveHasThree_AsksForTheFourth()
    {
        var decision = new AcceptabilityCheck(0.002m, RepeatCost.Inexpensive).Decide([0.05m, 0.0562m, 0.053m]);

        Assert.Equal((AcceptabilityOutcome.ObtainMore, 1), (decision.Outcome, decision.MoreNeeded));
    }

    [Fact]
    public void Inputs_WhenOutOfRange_AreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new AcceptabilityCheck(0m, RepeatCost.Expensive));
        Assert.Throws<ArgumentOutOfRangeException>(() => new AcceptabilityCheck(1m, 0));
        var check = new AcceptabilityCheck(1m, RepeatCost.Expensive);
        Assert.Contains("Found 1 results", Assert.Throws<ArgumentException>(() => check.Decide([1m])).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => check.Decide([1m, 2m, 3m, 4m, 5m]));
        Assert.Throws<ArgumentOutOfRangeException>(() => CriticalRange.PublishedFactor(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => CriticalRange.PublishedFactor(21));
    }

    [Property]
    public Property Decide_ForAnyResults_StaysWithinThemAndKeepsAllOfThem() => Prop.ForAll(Cases(), example =>
    {
        var decision = example.Check.Decide(example.Results);
        var used = example.Results.Take(decision.ResultsUsed).ToList();
        return decision.Outcome switch
        {
            AcceptabilityOutcome.Mean => decision.LastStep.Agrees && decision.FinalResult == used.Average(),
            AcceptabilityOutcome.Median => !decision.LastStep.Agrees && used.Count == 4
                && decision.FinalResult > used.Min() && decision.FinalResult < used.Max(),
            _ => !decision.LastStep.Agrees && decision.MoreNeeded > 0 && decision.ResultsUsed == example.Results.Count,
        };
    });

    [Property]
    public Property Decide_WhenAllResultsShift_ShiftsTheResultOnly() => Prop.ForAll(Cases(), example =>
    {
        var plain = example.Check.Decide(example.Results);
        var shifted = example.Check.Decide([.. example.Results.Select(result => result + 7m)]);
        return plain.Rule == shifted.Rule && (plain.FinalResult is null || Math.Abs(shifted.FinalResult!.Value - plain.FinalResult.Value - 7m) < 1e-20m);
    });

    [Property]
    public Property Decide_WithLargerSd_NeverNeedsMoreResults() => Prop.ForAll(Cases(), example =>
        new AcceptabilityCheck(example.Sd * 2m, example.Cost).Decide(example.Results).ResultsUsed <= example.Check.Decide(example.Results).ResultsUsed);

    [Property]
    public Property Decide_WhenMoreResultsFollowAgreement_DoesNotLookAtThem() => Prop.ForAll(Cases(), example =>
    {
        var decision = example.Check.Decide(example.Results);
        return decision.FinalResult is null
            || example.Check.Decide([.. example.Results.Take(decision.ResultsUsed)]).FinalResult == decision.FinalResult;
    });

    private static Arbitrary<Example> Cases() => (
        from count in Gen.Choose(2, 4)
        from results in Gen.Choose(0, 200).Select(value => value / 1000m).ArrayOf(count)
        from sd in Gen.Choose(1, 60).Select(value => value / 1000m)
        from cost in Gen.Elements(RepeatCost.Inexpensive, RepeatCost.Expensive)
        select new Example(results, sd, cost)).ToArbitrary();

    private static string Describe(AcceptabilityStep step)
    {
        var limit = step.Results == 2 ? "r" : $"CR({step.Results})";
        return string.Create(CultureInfo.InvariantCulture, $"n={step.Results} range {step.Range:0.00000} vs {limit}={step.Factor} s_r={step.CriticalRange:0.00000}");
    }

    private static AcceptabilityCheck Check(ReferenceRow row) => new(
        row.Exact("s_r"), row.Text("variant").StartsWith("inexpensive", StringComparison.Ordinal) ? RepeatCost.Inexpensive : RepeatCost.Expensive);

    private static decimal[] Results(ReferenceRow row) =>
        [.. row.Text("results_mg_per_g").Split(' ').Select(text => decimal.Parse(text, CultureInfo.InvariantCulture))];

    private sealed record Example(IReadOnlyList<decimal> Results, decimal Sd, RepeatCost Cost)
    {
        public AcceptabilityCheck Check => new(Sd, Cost);
    }
}
