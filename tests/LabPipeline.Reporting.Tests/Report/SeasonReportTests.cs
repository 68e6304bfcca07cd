using System.Text.RegularExpressions;
using System.Xml.Linq;
using LabPipeline.Reporting.Report;
using LabPipeline.Reporting.Tests.Season;

namespace LabPipeline.Reporting.Tests.Report;

public sealed partial class SeasonReportTests
{
    private static readonly ReportStamp Stamp = new(1, "lab manager", "LabPipeline test");

    [Fact]
    public void Page_WhenMadeTwice_HasTheSameBytes()
    {
        var data = new SeasonBuilder().Build();

        Assert.Equal(Html(data), Html(data));
    }

    [Fact]
    public void Page_WhenMadeFromKeptData_HasTheSameBytes()
    {
        var data = new SeasonBuilder().Build();
        var json = SeasonArchive.ToJson(data);
        var row = new LockedReportRow { Data = SeasonArchive.Pack(json), DataSha256 = SeasonArchive.Sha256(json) };

        Assert.Equal(Html(data), Html(SeasonArchive.Unpack(row)));
    }

    [Fact]
    public void KeptData_WhenChangedOutside_AreRefused()
    {
        var row = new LockedReportRow { TrialCode = "AA-25", Version = 1, Data = SeasonArchive.Pack("{}"), DataSha256 = new string('0', 64) };

        Assert.Contains("changed outside the program", Assert.Throws<InvalidDataException>(() => SeasonArchive.Unpack(row)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Page_WhenRead_NeedsNoNetworkAndNoScript()
    {
        var page = Html(new SeasonBuilder().Build());

        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotMatch(@"(src|href)=""(?!#)", page);
        Assert.DoesNotMatch(@"url\((?!#)", page);
        Assert.DoesNotContain("@import", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Page_WhenTextHoldsMarks_EncodesThem()
    {
        var page = Html(new SeasonBuilder().Build());

        Assert.Contains("Two rates &lt;on&gt; three clones", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<on>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("a <b>.csv", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Links_WhenFollowed_AllLeadSomewhereOnThePage()
    {
        var page = Html(new SeasonBuilder().Build());
        var targets = Targets().Matches(page).Select(match => match.Groups[1].Value).ToList();

        Assert.Equal(targets.Count, targets.Distinct().Count());
        Assert.Empty(Links().Matches(page).Select(match => match.Groups[1].Value).Distinct().Except(targets));
        Assert.Contains("E02-003", targets);
    }

    [Fact]
    public void Drawings_WhenReadOut_HaveATitleAndADescription()
    {
        var drawings = Drawings().Matches(Html(new SeasonBuilder().Build())).Select(match => XElement.Parse(match.Value)).ToList();

        Assert.True(drawings.Count > 10);
        Assert.All(drawings, drawing =>
        {
            Assert.Equal("img", drawing.Attribute("role")!.Value);
            Assert.All(new[] { "title", "desc" }, name => Assert.NotEmpty(drawing.Elements().Single(element => element.Name.LocalName == name).Value));
        });
    }

    [Theory]
    [InlineData(1, 3, 2, false)]
    [InlineData(4, 1, 2, false)]
    [InlineData(4, 1, 1, false)]
    [InlineData(4, 3, 2, true)]
    public void Page_OfASeasonThatCannotBeAnalysedWhole_SaysWhyAndPrintsTheRest(int blocks, int clones, int rates, bool below)
    {
        var builder = new SeasonBuilder();
        var page = Html((builder with { Blocks = blocks, Clones = [.. builder.Clones.Take(clones)], Rates = [.. builder.Rates.Take(rates)], AllBelowLimit = below, MissingPulls = [3] }).Build());

        Assert.Contains("class=\"cannot\"", page, StringComparison.Ordinal);
        Assert.Contains("no plot was measured at this pull", page, StringComparison.Ordinal);
        Assert.Contains("id=\"annex-evidence\"", page, StringComparison.Ordinal);
        Assert.Contains("id=\"fig-grid\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_AboutADifferenceThatIsNotShown_NeverCallItEquality()
    {
        var page = Html(new SeasonBuilder().Build());

        Assert.DoesNotMatch(@"\b(are|were|is|was) (equal|the same|identical)\b", page);
        Assert.Matches("no difference in .* was shown", page);
    }

    private static string Html(LabPipeline.Reporting.Season.Data.SeasonData data) => SeasonReport.Html(ReportContent.Of(data, Stamp));

    [GeneratedRegex(" id=\"([^\"]+)\"")]
    private static partial Regex Targets();

    [GeneratedRegex("href=\"#([^\"]+)\"")]
    private static partial Regex Links();

    [GeneratedRegex("<svg .*?</svg>", RegexOptions.Singleline)]
    private static partial Regex Drawings();
}
