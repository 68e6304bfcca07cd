using System.Diagnostics;
using System.Globalization;
using LabPipeline.Hosting;
using LabPipeline.Reporting.Season;
using LabPipeline.Reporting.Season.Data;
using LabPipeline.Station.Tests.Commands;
using LabPipeline.Testing;

namespace LabPipeline.Station.Tests.Season;

/// <summary>The demonstration season through its report, its exports and its evidence.</summary>
public sealed class DemoSeasonReportTests(ProcessedDemo demo) : IClassFixture<ProcessedDemo>
{
    private const string Trial = "KT-NITRO-25";

    /// <summary>R reads the exported plot means and computes the analyses again with aov.</summary>
    [Fact]
    public async Task Tables_WhenRComputesThemFromTheExport_AgreeToAMillionth()
    {
        var script = FindProgram("Rscript");
        Assert.SkipWhen(script is null, script is null ? Requirement.Waive(Requirement.R, "Rscript is not on the search path (Debian: r-base-core)") : "");
        using var folder = new ScratchFolder();
        await RunAsync("export", Trial, "--what", "plot-means", "--out", folder.File("plot-means.csv"));
        await File.WriteAllTextAsync(folder.File("tables.R"), Script, TestContext.Current.CancellationToken);

        var lines = (await ProcessAsync(script!, folder.File("tables.R"), folder.File("plot-means.csv"))).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(',')).ToList();

        var analysis = await AnalyseAsync();
        Assert.Equal(2 * 8 * (4 + 4), lines.Count);
        Assert.All(lines, line => Agree(line, analysis));
    }

    /// <summary>Every snippet of docs/specs/exports.md, as it stands there, on the exports of the demonstration; those whose packages are missing are left out.</summary>
    [Theory]
    [InlineData("r", "Rscript", Requirement.R)]
    [InlineData("python", "python3", Requirement.Python)]
    public async Task Snippets_OfTheDocs_ReadWhatIsExported(string language, string program, string requirement)
    {
        var found = FindProgram(program);
        Assert.SkipWhen(found is null, found is null ? Requirement.Waive(requirement, $"{program} is not on the search path") : "");
        using var folder = new ScratchFolder();
        foreach (var (what, format) in new[] { ("plot-means", "csv"), ("plot-means", "parquet"), ("plot-means", "xlsx"), ("readings", "csv") })
        {
            await RunAsync("export", Trial, "--what", what, "--format", format, "--out", folder.File($"{what}.{format}"));
        }

        File.Copy(Path.Combine(demo.DataFolder, "warehouse.db"), folder.File("warehouse.db"));
        var snippets = await DocumentSnippet.RunAllAsync(language, found!, folder.Path);

        Assert.True(snippets.Count(snippet => snippet.MissingPackage is null) >= 2, string.Join("; ", snippets.Select(snippet => snippet.MissingPackage)));
        Assert.All(snippets.Where(snippet => snippet.MissingPackage is null), snippet => Assert.True(snippet.Failure is null, $"{snippet.Text}\n{snippet.Failure}"));
        Assert.All(snippets.Where(snippet => snippet.MissingPackage is null), snippet => Assert.Equal(snippet.Expected, snippet.Output.Trim()));
        Array.ForEach([.. snippets.Where(snippet => snippet.MissingPackage is not null)], snippet => TestContext.Current.AddWarning($"not run, {snippet.MissingPackage} is not installed: {snippet.Text}"));
    }

    [Fact]
    public async Task Report_WhenLockedAndMadeAgain_HasTheSameBytes()
    {
        using var folder = new ScratchFolder();

        var locked = await RunAsync("season", "report", Trial, "--lock", "--by", "lab manager", "--out", folder.File("locked.html"));
        await RunAsync("season", "report", Trial, "--report", "1", "--out", folder.File("again.html"));

        Assert.Contains("version 1", locked, StringComparison.Ordinal);
        Assert.Equal(await File.ReadAllBytesAsync(folder.File("locked.html"), TestContext.Current.CancellationToken), await File.ReadAllBytesAsync(folder.File("again.html"), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Evidence_OfAMean_NamesReadingsFilesAndLines()
    {
        var printed = await RunAsync("evidence", Trial, "e06-001", "--quantity", "glucose_in_extract");

        Assert.Contains("pull 6, treatment KT-104:120", printed, StringComparison.Ordinal);
        Assert.Contains("analyser-", printed, StringComparison.Ordinal);
        Assert.Contains("trial plan loaded", printed, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Evidence_WhenUnknown_SaysWhereToFindItsName()
    {
        var (exitCode, _, errors) = await demo.RunAsync("evidence", Trial, "E99-001");

        Assert.Equal(ExitCode.NotFound, exitCode);
        Assert.Contains("annex B", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pdf_WithoutABrowser_SaysThatThePageIsWritten()
    {
        using var folder = new ScratchFolder();

        var (exitCode, _, errors) = await demo.RunAsync("season", "report", Trial, "--out", folder.File("r.html"), "--pdf", "--chromium", folder.File("none"));

        Assert.Equal(ExitCode.NotFound, exitCode);
        Assert.Contains("the page is written, the PDF is not", errors, StringComparison.Ordinal);
        Assert.True(File.Exists(folder.File("r.html")));
    }

    [Fact]
    public async Task Export_OfTypedFormatsWithoutAFile_IsRefused()
    {
        var (exitCode, _, errors) = await demo.RunAsync("export", Trial, "--what", "plot-means", "--format", "parquet");

        Assert.NotEqual(ExitCode.Done, exitCode);
        Assert.Contains("--out is missing", errors, StringComparison.Ordinal);
    }

    private static void Agree(string[] line, TrialAnalysis analysis)
    {
        var pull = analysis.Responses.Single(one => one.Response.Quantity.Name == line[0]).Pulls.Single(one => one.PullNo == int.Parse(line[1], CultureInfo.InvariantCulture));
        double[] found;
        if (line[2] == "mean")
        {
            found = [pull.MeansOf("clone")!.Find(line[3])!.OnScale!.Value];
        }
        else
        {
            var row = pull.Anova!.Find(line[3]);
            found = row.F is { } f ? [row.Df, row.SumOfSquares!.Value, f, row.P!.Value] : [row.Df, row.SumOfSquares!.Value];
        }

        foreach (var (ours, theirs) in found.Zip(line.Skip(4).Select(text => double.Parse(text, CultureInfo.InvariantCulture))))
        {
            Assert.True(Math.Abs(ours - theirs) <= 1e-6 * Math.Abs(theirs), $"{string.Join(",", line)}: found {ours:R}");
        }
    }

    private async Task<TrialAnalysis> AnalyseAsync()
    {
        using var warehouse = await StationWarehouse.OpenAsync(new LabOptions { DataFolder = demo.DataFolder }, TestContext.Current.CancellationToken);
        var data = await warehouse.ReadAsync(session => SeasonDataStore.FindAsync(session, Trial, DateTimeOffset.UnixEpoch), TestContext.Current.CancellationToken);
        return TrialAnalyser.Analyse(data!);
    }

    private async Task<string> RunAsync(params string[] arguments)
    {
        var (exitCode, output, errors) = await demo.RunAsync(arguments);
        Assert.True(exitCode == ExitCode.Done, errors + output);
        return output;
    }

    private static string? FindProgram(string name) => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .Select(folder => Path.Combine(folder, name)).FirstOrDefault(File.Exists);

    private static async Task<string> ProcessAsync(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program) { RedirectStandardOutput = true, RedirectStandardError = true };
        Array.ForEach(arguments, start.ArgumentList.Add);
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        var output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(process.ExitCode == 0, await errors);
        return output;
    }

    private const string Script =
        """
        d <- read.csv(commandArgs(TRUE)[1], na.strings = "", colClasses = c(plot_code = "character", block = "character"), fileEncoding = "UTF-8")
        d$block <- factor(d$block); d$clone <- factor(d$clone); d$nitrogen <- factor(d$treatment)
        for (response in c("glucose", "mean_hunter_l")) for (pull in sort(unique(d$pull_no))) {
          p <- d[d$pull_no == pull, ]
          p$y <- if (response == "glucose") log(p$glucose_mg_per_g) else p$hunter_l
          p <- droplevels(p[!is.na(p$y), ])
          fit <- lm(y ~ block + clone * nitrogen, p)
          table <- anova(fit)
          for (term in c("clone", "nitrogen", "clone:nitrogen", "Residuals"))
            writeLines(paste(c(response, pull, "anova", sub("Residuals", "Residual", term), sprintf("%.15g", na.omit(unlist(table[term, c("Df", "Sum Sq", "F value", "Pr(>F)")])))), collapse = ","))
          grid <- expand.grid(block = levels(p$block), clone = levels(p$clone), nitrogen = levels(p$nitrogen))
          means <- tapply(predict(fit, grid), grid$clone, mean)
          for (clone in names(means)) writeLines(paste(response, pull, "mean", clone, sprintf("%.15g", means[[clone]]), sep = ","))
        }
        """;
}
