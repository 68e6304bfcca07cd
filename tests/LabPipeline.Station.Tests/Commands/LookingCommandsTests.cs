using System.Globalization;

namespace LabPipeline.Station.Tests.Commands;

/// <summary>The commands as a person types them, on the processed demonstration season.</summary>
public sealed class LookingCommandsTests(ProcessedDemo demo) : IClassFixture<ProcessedDemo>
{
    [Theory]
    [InlineData(" 25kn02003a ")]
    [InlineData("25KN02003A-S")]
    public async Task Trail_WhenASampleHasResults_LeadsToFileAndLine(string scanned)
    {
        var (exitCode, output, _) = await demo.RunAsync("trail", scanned);

        Assert.Equal(ExitCode.Done, exitCode);
        Assert.Contains("25KN02003A", output, StringComparison.Ordinal);
        Assert.Contains("specific_gravity", output, StringComparison.Ordinal);
        Assert.Contains("weighing_", output, StringComparison.Ordinal);
        Assert.Contains("duplicate glucose", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Trail_WhenTheBarcodeIsUnknown_SaysSoWithItsOwnExitCode()
    {
        var (exitCode, _, errors) = await demo.RunAsync("trail", "NOSUCH");

        Assert.Equal(ExitCode.NotFound, exitCode);
        Assert.Contains("'NOSUCH'", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Arrivals_WhenNarrowedToRefused_ShowTheReason()
    {
        var (exitCode, output, _) = await demo.RunAsync("arrivals", "--state", "refused");

        Assert.Equal(ExitCode.Done, exitCode);
        Assert.Contains("found '500,00'; expected a number with decimal point", output, StringComparison.Ordinal);
        Assert.Contains("5 arrivals: 5 refused.", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Arrivals_WhenTheStateIsNone_ListWhatIsExpected()
    {
        var (exitCode, output, errors) = await demo.RunAsync("arrivals", "--state", "lost");

        Assert.Equal(ExitCode.Failed, exitCode);
        Assert.Contains("expected stored, duplicate, refused, waiting", output + errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Alerts_WhenListed_SayWhatWasFoundAndWhatToDo()
    {
        var (exitCode, output, _) = await demo.RunAsync("alerts");

        Assert.Equal(ExitCode.Done, exitCode);
        Assert.Contains("differ by", output, StringComparison.Ordinal);
        Assert.Contains("Extract the sample once more", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Settle_WhenTheReasonIsMissing_ChangesNothing()
    {
        var (exitCode, output, errors) = await demo.RunAsync("settle", "1", "--by", "Ada");

        Assert.Equal(ExitCode.Failed, exitCode);
        Assert.Contains("--why is missing", output + errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Settle_WhenTheAlertDoesNotExist_SaysSo()
    {
        var (exitCode, _, errors) = await demo.RunAsync("settle", "99999", "--by", "Ada", "--why", "seen");

        Assert.Equal(ExitCode.NotFound, exitCode);
        Assert.Contains("There is no alert 99999", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TakeOut_WhenNoSuchFileArrived_SaysSo()
    {
        var (exitCode, _, errors) = await demo.RunAsync("take-out", "nowhere.csv", "--by", "Ada", "--why", "test");

        Assert.Equal(ExitCode.NotFound, exitCode);
        Assert.Contains("No file 'nowhere.csv' has arrived", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Spread_WhenThereAreDuplicates_ShowsTheLabsOwnBesideTheOneInUse()
    {
        var (exitCode, output, _) = await demo.RunAsync("spread");

        Assert.Equal(ExitCode.Done, exitCode);
        Assert.Contains("in use, version 1", output, StringComparison.Ordinal);
        Assert.Contains("from the warehouse", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Commands_WhenThereIsNoWarehouse_SayHowToMakeOne()
    {
        using var console = new Spectre.Console.Testing.TestConsole();
        using var errors = new StringWriter(CultureInfo.InvariantCulture);

        var exitCode = await StationApp.RunAsync(["alerts", "--data", Path.Combine(demo.DataFolder, "nothing here")], console, errors);

        Assert.Equal(ExitCode.NotFound, exitCode);
        Assert.Contains("station demo", errors.ToString(), StringComparison.Ordinal);
    }
}
