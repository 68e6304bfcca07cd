using LabPipeline.Quality.Results;
using LabPipeline.Quality.Rules;
using LabPipeline.Testing;

namespace LabPipeline.Quality.Tests.Rules;

/// <summary>Pins every number the rules decide by: changing one is a decision, not a slip. Sources stand in docs/specs/quality-rules.md.</summary>
public sealed class RuleDefaultsTests
{
    [Fact]
    public void Defaults_AreThoseOfTheSpecification()
    {
        Assert.Equal([2m, 4m, 5m, 10m], RuleDefaults.DilutionFactors);
        Assert.Equal(1.96m, RuleDefaults.DilutionReach);
        Assert.Equal(0.10m, RuleDefaults.WidestDilutionReach);
        Assert.Equal(0.003m, RuleDefaults.SessionShift);
        Assert.Equal(3m, RuleDefaults.SessionErrors);
        Assert.Equal(5, RuleDefaults.SessionSamples);
        Assert.Equal(90m, RuleDefaults.PeelTargetPercent);
        Assert.Equal(1, RuleDefaults.PullGraceDays);
        Assert.Equal(15, RuleDefaults.HeldFileMinutes);
        Assert.Equal(["beyond_3s", "two_beyond_2s"], RuleDefaults.ControlRules.Select(rule => rule.Name));
        Assert.Equal(["seven_one_side", "seven_steady"], RuleDefaults.TrendRules.Select(rule => rule.Name));
        Assert.Equal((20, 1, 3, 10), (RuleDefaults.ControlRuns, RuleDefaults.SilentGraceDays, RuleDefaults.SilentSamples, RuleDefaults.DeliveryMinutes));
    }

    [Fact]
    public void Limits_WhenTheLabSaysNothing_AreTheDefaults()
    {
        var limits = new RuleLimits();

        Assert.Equal(
            (RuleDefaults.SessionShift, RuleDefaults.SessionErrors, RuleDefaults.SessionSamples, RuleDefaults.PeelTargetPercent, RuleDefaults.PullGraceDays, RuleDefaults.HeldFileMinutes, false),
            (limits.SessionShift, limits.SessionErrors, limits.SessionSamples, limits.PeelTargetPercent, limits.PullGraceDays, limits.HeldFileMinutes, limits.TwoMoreExtractsAtOnce));
        Assert.True(new RuleLimitsValidator().Validate(null, limits).Succeeded);
    }

    [Fact]
    public void Limits_ThatMakeNoSense_AreAllNamed()
    {
        var limits = new RuleLimits { SessionShift = 0m, SessionErrors = -1m, SessionSamples = 2, PeelTargetPercent = 101m, PullGraceDays = -1, HeldFileMinutes = -1 };

        Assert.Equal(6, new RuleLimitsValidator().Validate(null, limits).Failures!.Count());
    }

    [Fact]
    public void ProvisionalRepeatability_IsHalfHorwitzOfTheReferenceTable()
    {
        // E_horwitz.csv (AOAC Guidelines, Appendix F 2012): half PRSD_R at 0.05 and 0.03 mg/g.
        var table = ReferenceTable.Load("E_horwitz.csv");

        Assert.Equal(ProvisionalRepeatability.GlucoseRelative, decimal.Round(table.Find("level", "0.05 mg/g").Exact("RSD_r_half_pct") / 100m, 3));
        Assert.Equal(ProvisionalRepeatability.GlucoseConstant, decimal.Round(0.03m * table.Find("level", "0.03 mg/g").Exact("RSD_r_half_pct") / 100m, 4));
        // Half of 2 C^-0.15 at C = 0.0002: the formula of the same table, which has no row for 0.2 mg/g.
        Assert.Equal(ProvisionalRepeatability.SucroseConstant, decimal.Round(0.2m * (decimal)Math.Pow(0.0002, -0.15) / 100m, 4));
        Assert.Equal(0.04m, ProvisionalRepeatability.SucroseRelative);
    }
}
