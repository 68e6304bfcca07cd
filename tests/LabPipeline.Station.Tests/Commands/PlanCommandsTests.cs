using LabPipeline.Station.Demo;
using LabPipeline.Testing;
using Spectre.Console.Testing;

namespace LabPipeline.Station.Tests.Commands;

/// <summary>Plans and profiles from the command line.</summary>
public sealed class PlanCommandsTests
{
    [Fact]
    public async Task PlanCheck_WhenThePlanIsBroken_ListsEveryFaultAndLoadsNothing()
    {
        using var folder = new ScratchFolder();
        var plan = Place(folder, text => text.Replace("\"America/Chicago\"", "\"America/Nowhere\"", StringComparison.Ordinal)
            .Replace("\"KT-104\"", "\"KT-999\"", StringComparison.Ordinal));

        var (exitCode, _, errors) = await RunAsync("plan", "check", plan);

        Assert.Equal(ExitCode.Faults, exitCode);
        Assert.Contains("America/Nowhere", errors, StringComparison.Ordinal);
        Assert.Contains("KT-999", errors, StringComparison.Ordinal);
        Assert.Contains("nothing was loaded", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task PlanLoad_WhenLoadedTwice_RegistersItsSamplesOnce()
    {
        using var folder = new ScratchFolder();
        var plan = Place(folder, text => text);

        var first = await RunAsync("plan", "load", plan, "--by", "Ada", "--data", folder.File("data"));
        var second = await RunAsync("plan", "load", plan, "--by", "Ada", "--data", folder.File("data"));

        Assert.Contains("384 samples registered", first.Output, StringComparison.Ordinal);
        Assert.Contains("nothing new; 0 samples registered", second.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Samples_WhenThePlanIsSound_AreListedWithBarcodes()
    {
        using var folder = new ScratchFolder();

        var (exitCode, _, _) = await RunAsync("samples", Place(folder, text => text), "--out", folder.File("samples.csv"));

        Assert.Equal(ExitCode.Done, exitCode);
        Assert.Equal(385, (await File.ReadAllLinesAsync(folder.File("samples.csv"), TestContext.Current.CancellationToken)).Length);
    }

    [Fact]
    [Shows(78)]
    public async Task DryRun_WhenTheFileFits_ShowsTheFirstRowsAsTheyWouldBeStored()
    {
        using var folder = new ScratchFolder();
        var scenario = DemoScenario.Create();
        var profile = scenario.Documents.Single(document => document.Name == "analyser-a.json");
        var file = scenario.Files.First(candidate => candidate.Name.StartsWith("analyser-a_", StringComparison.Ordinal));
        await File.WriteAllTextAsync(folder.File(profile.Name), profile.Text, TestContext.Current.CancellationToken);
        await File.WriteAllBytesAsync(folder.File(file.Name), file.Bytes.ToArray(), TestContext.Current.CancellationToken);

        var (exitCode, output, _) = await RunAsync("dry-run", folder.File(profile.Name), folder.File(file.Name));

        Assert.Equal(ExitCode.Done, exitCode);
        Assert.Contains("glucose_in_extract", output, StringComparison.Ordinal);
        Assert.Contains("mg/dL", output, StringComparison.Ordinal);
    }

    private static string Place(ScratchFolder folder, Func<string, string> change)
    {
        var documents = DemoScenario.Create().Documents.Where(document => document.Folder == "plans").ToList();
        foreach (var document in documents)
        {
            File.WriteAllText(folder.File(document.Name), document.Name.EndsWith(".json", StringComparison.Ordinal) ? change(document.Text) : document.Text);
        }

        return folder.File(documents.Single(document => document.Name.EndsWith(".json", StringComparison.Ordinal)).Name);
    }

    private static async Task<(int ExitCode, string Output, string Errors)> RunAsync(params string[] arguments)
    {
        using var console = new TestConsole();
        console.Profile.Width = 400;
        using var errors = new StringWriter();
        var exitCode = await StationApp.RunAsync(arguments, console, errors);
        return (exitCode, console.Output, errors.ToString());
    }
}
