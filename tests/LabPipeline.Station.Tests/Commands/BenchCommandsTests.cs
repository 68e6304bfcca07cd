using System.Text;
using System.Text.Json.Nodes;
using LabPipeline.Station.Demo;
using LabPipeline.Testing;
using Microsoft.Data.Sqlite;
using Spectre.Console.Testing;

namespace LabPipeline.Station.Tests.Commands;

/// <summary>Planning, labels and bench papers from the command line, with the plan of the invented season.</summary>
public sealed class BenchCommandsTests : IDisposable
{
    private const string Trial = "KT-NITRO-25";

    private readonly ScratchFolder _folder = new();

    [Fact]
    public async Task PlanDraw_OfAnOutline_WritesAPlanThatIsSoundAndItsMap()
    {
        var drawn = await RunAsync("plan", "draw", Outline(), "--seed", "20250115", "--out", _folder.Path);
        var check = await RunAsync("plan", "check", _folder.File($"{Trial}-plan.json"));

        Assert.Equal((ExitCode.Done, ""), (drawn.ExitCode, drawn.Errors));
        Assert.Contains("is sound: 48 plots, 8 pulls, 384 samples", check.Output, StringComparison.Ordinal);
        Assert.Equal(49, File.ReadAllLines(_folder.File($"{Trial}-map.csv")).Length);
        Assert.Equal("%PDF-", Encoding.ASCII.GetString(File.ReadAllBytes(_folder.File($"{Trial}-map.pdf")), 0, 5));
        Assert.Contains("seed 20250115", File.ReadAllText(_folder.File($"{Trial}-map.svg")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task PlanDraw_WithAnotherSeed_KeepsTheLayoutThatIsThere()
    {
        await RunAsync("plan", "draw", Outline(), "--seed", "1", "--out", _folder.Path);
        var before = File.ReadAllText(_folder.File($"{Trial}-plan.json"));

        var refused = await RunAsync("plan", "draw", Outline(), "--seed", "2", "--out", _folder.Path);

        Assert.Equal(ExitCode.Faults, refused.ExitCode);
        Assert.Contains("holds another layout; nothing was changed", refused.Errors, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(_folder.File($"{Trial}-plan.json")));
        Assert.Equal(ExitCode.Done, (await RunAsync("plan", "draw", Outline(), "--seed", "2", "--out", _folder.Path, "--anew")).ExitCode);
        Assert.NotEqual(before, File.ReadAllText(_folder.File($"{Trial}-plan.json")));
    }

    [Fact]
    public async Task PlanDraw_WithoutASeed_AsksForOne() =>
        Assert.Contains("--seed is missing", (await RunAsync("plan", "draw", Outline(), "--out", _folder.Path)).Errors, StringComparison.Ordinal);

    [Fact]
    public async Task Calendar_OfOverlappingWindows_IsRefusedInOneLine()
    {
        var plan = Plan(root => root["pulls"]![1]!["opens"] = "2025-10-09");

        var (exitCode, _, errors) = await RunAsync("calendar", plan, "--out", _folder.File("pulls.ics"));

        Assert.Equal(ExitCode.Faults, exitCode);
        Assert.Contains("pulls[1].opens: found 2025-10-09; expected a day after 2025-10-10, when pull 1 closes", Assert.Single(errors.Split('\n'), line => line.Contains("pulls[1]", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.False(File.Exists(_folder.File("pulls.ics")));
    }

    [Fact]
    public async Task Calendar_OfAPlan_HoldsTwoEventsAPull()
    {
        Assert.Equal(ExitCode.Done, (await RunAsync("calendar", Plan(), "--out", _folder.File("pulls.ics"))).ExitCode);
        Assert.Equal(16, File.ReadLines(_folder.File("pulls.ics")).Count(line => line == "BEGIN:VEVENT"));
    }

    [Fact]
    public async Task Labels_OfABlindedPull_WriteThePrintAndTheKey()
    {
        var (exitCode, output, errors) = await RunAsync(
            "labels", Plan(), "--pull", "3", "--halves", "--blind-seed", "5", "--blind-key", _folder.File("key.csv"), "--out", _folder.File("labels.pdf"));

        Assert.Equal((ExitCode.Done, ""), (exitCode, errors));
        Assert.Contains("96 labels", output, StringComparison.Ordinal);
        Assert.Equal(49, File.ReadAllLines(_folder.File("key.csv")).Length);
        Assert.True(new FileInfo(_folder.File("labels.pdf")).Length > 1000);
    }

    [Fact]
    public async Task Labels_WhoseTextIsTooLong_AreRefusedByLabelAndField()
    {
        var plan = Plan(root => root["trial"]!["code"] = "KT-WITH-MANY-WORDS-WITH-MEANINGS");

        var (exitCode, _, errors) = await RunAsync("labels", plan, "--pull", "3", "--halves", "--out", _folder.File("labels.pdf"));

        Assert.Equal(ExitCode.Faults, exitCode);
        Assert.Contains("field trial: found 'KT-WITH-MANY-WORDS-WITH-MEANINGS'", errors, StringComparison.Ordinal);
        Assert.Contains("nothing was printed", errors, StringComparison.Ordinal);
        Assert.False(File.Exists(_folder.File("labels.pdf")));
    }

    [Fact]
    public async Task PickList_OfALoadedPull_IsPrintedWithAWarningThatItIsLate()
    {
        await RunAsync("plan", "load", Plan(), "--by", "Ada", "--data", _folder.File("data"));

        var (exitCode, output, errors) = await RunAsync("pick-list", Trial, "--pull", "1", "--data", _folder.File("data"), "--out", _folder.File("pick"));

        Assert.Equal((ExitCode.Done, ""), (exitCode, errors));
        Assert.Contains("its window ended on 2025-10-10. Readings will count as late.", output, StringComparison.Ordinal);
        Assert.Equal(49, File.ReadAllLines(_folder.File("pick.csv")).Length);
        Assert.True(File.Exists(_folder.File("pick.pdf")));
    }

    [Fact]
    public async Task BenchOrder_OnceDrawn_StaysUntilAReasonIsGiven()
    {
        await RunAsync("plan", "load", Plan(), "--by", "Ada", "--data", _folder.File("data"));

        var first = await BenchOrderAsync();
        var again = await BenchOrderAsync();
        var refused = await BenchOrderAsync("--seed", "7");
        var anew = await BenchOrderAsync("--seed", "7", "--why", "two bags were lost", "--by", "Ada");
        var after = await BenchOrderAsync();

        Assert.StartsWith("trial,pull,kind,place,block,plot,barcode,draw,seed\n", first.Output, StringComparison.Ordinal);
        Assert.Equal(49, first.Output.TrimEnd().Split('\n').Length);
        Assert.Equal(first.Output, again.Output);
        Assert.Equal(ExitCode.Faults, refused.ExitCode);
        Assert.Contains("was drawn with seed 20251006", refused.Errors, StringComparison.Ordinal);
        Assert.Contains(",2,7\n", anew.Output, StringComparison.Ordinal);
        Assert.Equal(anew.Output, after.Output);
    }

    [Fact]
    public async Task PlanAdvice_WithoutResults_SaysPlainlyThatThereAreNone()
    {
        await RunAsync("plan", "load", Plan(), "--by", "Ada", "--data", _folder.File("data"));

        var (exitCode, output, _) = await RunAsync("plan", "advice", Trial, "--quantity", "glucose", "--ratio", "1.25", "--data", _folder.File("data"));

        Assert.Equal(ExitCode.NotFound, exitCode);
        Assert.Contains("there is no variance to go by, and none is made up", output, StringComparison.Ordinal);
    }

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        _folder.Dispose();
    }

    private Task<(int ExitCode, string Output, string Errors)> BenchOrderAsync(params string[] more) =>
        RunAsync(["bench-order", Trial, "--pull", "1", "--kind", "analysis", "--data", _folder.File("data"), .. more]);

    private string Outline()
    {
        var root = JsonNode.Parse(DemoPlan().Text)!.AsObject();
        root.Remove("plotsFile");
        File.WriteAllText(_folder.File("outline.json"), root.ToJsonString());
        return _folder.File("outline.json");
    }

    private string Plan(Action<JsonObject>? change = null)
    {
        foreach (var document in DemoScenario.Create().Documents.Where(document => document.Folder == "plans"))
        {
            File.WriteAllText(_folder.File(document.Name), document.Text);
        }

        var root = JsonNode.Parse(DemoPlan().Text)!.AsObject();
        change?.Invoke(root);
        File.WriteAllText(_folder.File(DemoPlan().Name), root.ToJsonString());
        return _folder.File(DemoPlan().Name);
    }

    private static DemoDocument DemoPlan() =>
        DemoScenario.Create().Documents.Single(document => document.Folder == "plans" && document.Name.EndsWith(".json", StringComparison.Ordinal));

    private static async Task<(int ExitCode, string Output, string Errors)> RunAsync(params string[] arguments)
    {
        using var console = new TestConsole();
        console.Profile.Width = 400;
        using var errors = new StringWriter();
        var exitCode = await StationApp.RunAsync(arguments, console, errors);
        return (exitCode, console.Output, errors.ToString());
    }
}
