using System.Globalization;
using System.Text.RegularExpressions;
using LabPipeline.Science.Guides;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Guides;

/// <summary>Every default guide limit is stated by a row of J_literature_thresholds.csv, with the same evidence.</summary>
public sealed class GuideLimitTests
{
    [Fact]
    public void GuideLimits_EveryOne_IsStatedByItsRow()
    {
        var table = ReferenceTable.Load("J_literature_thresholds.csv");
        Assert.All(GuideLimits.All, guide =>
        {
            var row = table.Find("id", guide.LiteratureRow.ToString(CultureInfo.InvariantCulture));
            var numbers = Regex.Matches(row.Text("value") + " " + row.Text("context"), @"\d+(\.\d+)?")
                .Select(match => decimal.Parse(match.Value, CultureInfo.InvariantCulture));

            Assert.Contains(guide.Value, numbers);
            Assert.Contains(guide.Unit, row.Text("units"), StringComparison.Ordinal);
            Assert.Equal(EvidenceOf(row), guide.Evidence);
        });
    }

    [Fact]
    public void GuideLimits_Names_AreUnique() =>
        Assert.Equal(GuideLimits.All.Count, GuideLimits.All.Select(guide => guide.Name).Distinct().Count());

    [Fact]
    public void IsMet_OnTheLimit_FollowsTheBound()
    {
        Assert.False(GuideLimits.GlucoseBeforeHolding.IsMet(0.035m));
        Assert.True(GuideLimits.GlucoseAct.IsMet(0.35m));
        Assert.True(GuideLimits.HunterGood.IsMet(60m));
        Assert.Null(GuideLimits.SucroseBeforeHolding.IsMet(0.7m));
    }

    private static Evidence EvidenceOf(ReferenceRow row) => row.Text("evidence") switch
    {
        var text when text.StartsWith("FROM MEMORY", StringComparison.Ordinal) => Evidence.FromMemory,
        "common practice, no source" => Evidence.CommonPractice,
        _ => Evidence.Seen,
    };
}
