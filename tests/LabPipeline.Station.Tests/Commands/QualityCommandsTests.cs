namespace LabPipeline.Station.Tests.Commands;

/// <summary>Controls, thresholds, exclusions and the season grid as a person types them, on the processed demonstration season.</summary>
public sealed class QualityCommandsTests(ProcessedDemo demo) : IClassFixture<ProcessedDemo>
{
    [Fact]
    public async Task Season_OfTheDemo_PrintsOneLetterAPlot()
    {
        var (exitCode, output, _) = await demo.RunAsync("season", "grid", "KT-NITRO-25");

        Assert.Equal(ExitCode.Done, exitCode);
        Assert.Contains("MMMMMMMMMMMM", output, StringComparison.Ordinal);
        Assert.Contains("LLLLLLLLLLLL", output, StringComparison.Ordinal);
        Assert.Contains("+ done   L late   M missing", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Season_OfAnUnknownTrial_SaysSo()
    {
        var (exitCode, _, errors) = await demo.RunAsync("season", "grid", "NOSUCH");

        Assert.Equal(ExitCode.NotFound, exitCode);
        Assert.Contains("There is no trial 'NOSUCH'", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Controls_WhenListed_ShowEveryChartWithItsLimits()
    {
        var (exitCode, output, _) = await demo.RunAsync("controls", "list");

        Assert.Equal(ExitCode.Done, exitCode);
        Assert.Contains("brass check mass 1 kg", output, StringComparison.Ordinal);
        Assert.Contains("stated target, version 1", output, StringComparison.Ordinal);
        Assert.DoesNotContain("none: not judged", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Freeze_WithFewerThanTwentyRuns_IsRefusedWithWhatToDo()
    {
        var (exitCode, _, errors) = await demo.RunAsync("controls", "freeze", "sugar analyser A", "CTRL-LOW", "glucose_in_extract", "--by", "Ada", "--why", "test");

        Assert.Equal(ExitCode.Faults, exitCode);
        Assert.Contains("expected 20 or more; state a target", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Freeze_WithTwentyRunsAndMore_KeepsLimitsWithTheirHistory()
    {
        var (exitCode, output, errors) = await demo.RunAsync("controls", "freeze", "hydrostatic balance", "brass check mass 1 kg", "weight_in_air", "--by", "Ada", "--why", "season over");

        Assert.True(exitCode == ExitCode.Done, errors);
        Assert.Contains("version 2", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Release_OfARunWithoutAFailedControl_ChangesNothing()
    {
        var (exitCode, _, errors) = await demo.RunAsync("controls", "release", "sugar analyser A", "A251007-2", "--by", "Ada", "--why", "test");

        Assert.Equal(ExitCode.Faults, exitCode);
        Assert.Contains("there is nothing to release", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Release_OfARunWithAFailedControl_NamesWhoAnswersForIt()
    {
        var (exitCode, output, errors) = await demo.RunAsync("controls", "release", "sugar analyser A", "A251006-1", "--by", "Ada", "--why", "control vial had dried");

        Assert.True(exitCode == ExitCode.Done, errors);
        Assert.Contains("Ada answers for run A251006-1", output, StringComparison.Ordinal);
        var (_, alerts, _) = await demo.RunAsync("alerts", "--all", "--rule", "control check out");
        Assert.Contains("settled", alerts, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Target_WithoutATolerance_IsRefused()
    {
        var (exitCode, output, errors) = await demo.RunAsync("controls", "target", "x", "y", "hunter_l", "--target", "5", "--by", "Ada", "--why", "test");

        Assert.Equal(ExitCode.Failed, exitCode);
        Assert.Contains("--tolerance is missing", output + errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Thresholds_SetAndListed_ShowWhoAndWhy()
    {
        var (exitCode, _, errors) = await demo.RunAsync("thresholds", "set", "KT-NITRO-25", "glucose", "--high", "0.35", "--from", "2026-01-01", "--by", "Ada", "--why", "contract");
        var (_, output, _) = await demo.RunAsync("thresholds", "list");

        Assert.True(exitCode == ExitCode.Done, errors);
        Assert.Contains("0.35 mg/g", output, StringComparison.Ordinal);
        Assert.Contains("contract", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("glucose", "--low", "1,5", "expected a number with a decimal point")]
    [InlineData("oil_start", "--low", "170", "belongs to a fry batch")]
    [InlineData("glucose", "--shift", "0.1", "is for specific_gravity")]
    [InlineData("nosuch", "--low", "1", "There is no quantity 'nosuch'")]
    public async Task Thresholds_ThatMakeNoSense_AreRefused(string quantity, string option, string value, string expected)
    {
        var (exitCode, output, errors) = await demo.RunAsync("thresholds", "set", "KT-NITRO-25", quantity, option, value, "--by", "Ada", "--why", "test");

        Assert.NotEqual(ExitCode.Done, exitCode);
        Assert.Contains(expected, output + errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task SetAside_OfReadings_ShowsTheReasonInTheTrail()
    {
        var (exitCode, _, errors) = await demo.RunAsync("set-aside", "25KN07013L", "--quantity", "total_glucose_in_extract", "--extract", "2", "--by", "Ada", "--why", "flask spilt");
        var (_, output, _) = await demo.RunAsync("trail", "25KN07013L");

        Assert.True(exitCode == ExitCode.Done, errors);
        Assert.Contains("set aside: flask spilt", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task NoMoreExtracts_OfAnUnknownSample_SaysSo()
    {
        var (exitCode, _, errors) = await demo.RunAsync("no-more-extracts", "NOSUCH", "--by", "Ada", "--why", "none left");

        Assert.Equal(ExitCode.NotFound, exitCode);
        Assert.Contains("No plan holds 'NOSUCH'", errors, StringComparison.Ordinal);
    }
}
