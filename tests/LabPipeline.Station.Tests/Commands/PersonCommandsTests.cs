using LabPipeline.Testing;
using Spectre.Console.Testing;

namespace LabPipeline.Station.Tests.Commands;

/// <summary>People of the board from the command line.</summary>
public sealed class PersonCommandsTests
{
    private const string Right = "four pale russet chips";

    [Fact]
    public async Task PersonAdd_WithAPasswordFile_MakesTheFirstAdministratorOnce()
    {
        using var folder = new ScratchFolder();

        var first = await RunAsync(folder, "add", "Jo.Rivers", "--role", "administer");
        var second = await RunAsync(folder, "add", "jo.rivers", "--role", "look");

        Assert.Equal((ExitCode.Done, ExitCode.Faults), (first.ExitCode, second.ExitCode));
        Assert.Contains("jo.rivers may sign in to the board with the role administer", first.Output, StringComparison.Ordinal);
        Assert.Contains("The name 'jo.rivers' is taken", second.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("short", "The password has 5 characters; expected 12 to 128")]
    [InlineData("jo.rivers of the lab", "The password holds the name")]
    public async Task PersonAdd_WithAWeakPassword_SaysWhatIsWrongWithoutRepeatingIt(string password, string said)
    {
        using var folder = new ScratchFolder();

        var (exitCode, _, errors) = await RunAsync(folder, password, "add", "jo.rivers");

        Assert.Equal(ExitCode.Faults, exitCode);
        Assert.Contains(said, errors, StringComparison.Ordinal);
        Assert.DoesNotContain(password, errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task PersonAdd_WithARoleThereIsNot_NamesThoseThereAre()
    {
        using var folder = new ScratchFolder();

        var (exitCode, output, errors) = await RunAsync(folder, "add", "jo.rivers", "--role", "king");

        Assert.NotEqual(ExitCode.Done, exitCode);
        Assert.Contains("expected look, bench, manage, administer", output + errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task PersonPassword_OfNobody_SaysSo()
    {
        using var folder = new ScratchFolder();
        await RunAsync(folder, "add", "jo.rivers");

        var (exitCode, _, errors) = await RunAsync(folder, "password", "sam");

        Assert.Equal(ExitCode.Faults, exitCode);
        Assert.Contains("Nobody is called 'sam'.", errors, StringComparison.Ordinal);
    }

    private static Task<(int ExitCode, string Output, string Errors)> RunAsync(ScratchFolder folder, params string[] command) =>
        command[0] is "add" or "password" ? RunAsync(folder, Right, command) : RunAsync(folder, command[0], command[1..]);

    private static async Task<(int ExitCode, string Output, string Errors)> RunAsync(ScratchFolder folder, string password, string[] command)
    {
        await File.WriteAllTextAsync(folder.File("password"), password + "\n", TestContext.Current.CancellationToken);
        using var console = new TestConsole();
        using var errors = new StringWriter();
        console.Profile.Width = 200;
        var exitCode = await StationApp.RunAsync(
            ["person", .. command, "--data", folder.File("data"), "--password-file", folder.File("password")], console, errors);
        return (exitCode, console.Output, errors.ToString());
    }
}
