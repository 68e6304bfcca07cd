using System.Globalization;
using LabPipeline.Hosting;
using Microsoft.Data.Sqlite;

namespace LabPipeline.Station.Tests.Commands;

/// <summary>Exports as a person asks for them, on the processed demonstration season.</summary>
public sealed class ExportCommandTests(ProcessedDemo demo) : IClassFixture<ProcessedDemo>
{
    private const string Trial = "KT-NITRO-25";

    // The plan: 4 blocks of 4 clones by 3 nitrogen rates are 48 plots, each sampled at 8 pulls; a plot and pull has its row even when nothing was measured.
    private const int Plots = 4 * 4 * 3;
    private const int Pulls = 8;

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Export_OfPlotMeans_HasARowForEveryPlotAndPull()
    {
        var path = Path.Combine(demo.DataFolder, "plot-means.csv");

        var (exitCode, output, _) = await demo.RunAsync("export", Trial, "--what", "plot-means", "--out", path);

        Assert.Equal(ExitCode.Done, exitCode);
        Assert.Contains($"{Plots * Pulls} rows written to {path}.", output, StringComparison.Ordinal);
        Assert.Equal(1 + (Plots * Pulls), (await File.ReadAllLinesAsync(path, Token)).Length);
        Assert.Equal("trial_code"u8.ToArray(), (await File.ReadAllBytesAsync(path, Token))[..10]);
        Assert.Equal([path], Directory.GetFiles(demo.DataFolder, "plot-means.csv*"));
    }

    [Fact]
    public async Task Export_OfOnePull_HoldsTheValuesOfTheWarehouse()
    {
        var (exitCode, output, _) = await demo.RunAsync("export", Trial, "--what", "plot-means", "--pull", "2");

        var lines = output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var header = lines[0].Split(',');
        var plot = lines.Select(line => line.Split(',')).Single(cells => cells[Array.IndexOf(header, "plot_code")] == "101");
        var glucose = double.Parse(plot[Array.IndexOf(header, "glucose_mg_per_g")], CultureInfo.InvariantCulture);
        Assert.Equal(ExitCode.Done, exitCode);
        Assert.Equal(1 + Plots, lines.Length);
        // One sample stands for the plot at a pull, so its result is the mean, to the last bit.
        Assert.Equal(await StoredGlucoseAsync("101", 2), glucose);
    }

    [Theory]
    [InlineData("sample-results")]
    [InlineData("readings")]
    public async Task Export_OfTheOtherKinds_CountsWhatItWrites(string what)
    {
        var path = Path.Combine(demo.DataFolder, what + ".csv");

        var (exitCode, output, _) = await demo.RunAsync("export", Trial, "--what", what, "--out", path);

        var rows = (await File.ReadAllLinesAsync(path, Token)).Length - 1;
        Assert.Equal(ExitCode.Done, exitCode);
        Assert.True(rows >= Plots * Pulls, $"{rows} rows");
        Assert.Contains($"{rows} rows written", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Export_OfAnUnknownTrial_LeavesTheFileThatWasThere()
    {
        var path = Path.Combine(demo.DataFolder, "kept.csv");
        await File.WriteAllTextAsync(path, "kept", Token);

        var (exitCode, _, errors) = await demo.RunAsync("export", "KT-NITRO-26", "--what", "readings", "--out", path);

        Assert.Equal(ExitCode.NotFound, exitCode);
        Assert.Contains("Trial 'KT-NITRO-26' is not in the warehouse; it holds KT-NITRO-25.", errors, StringComparison.Ordinal);
        Assert.Equal("kept", await File.ReadAllTextAsync(path, Token));
        Assert.Equal([path], Directory.GetFiles(demo.DataFolder, "kept.csv*"));
    }

    [Fact]
    public async Task Export_OfAnUnknownPull_SaysWhichThereAre()
    {
        var (exitCode, output, errors) = await demo.RunAsync("export", Trial, "--what", "readings", "--pull", "9");

        Assert.Equal((ExitCode.NotFound, ""), (exitCode, output));
        Assert.Contains("has no pull 9; it has 1, 2, 3, 4, 5, 6, 7, 8.", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Export_IntoAFolderThatIsNotThere_SaysSo()
    {
        var (exitCode, _, errors) = await demo.RunAsync("export", Trial, "--what", "readings", "--out", Path.Combine(demo.DataFolder, "no such folder", "x.csv"));

        Assert.Equal(ExitCode.NotFound, exitCode);
        Assert.Contains("There is no folder", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Export_OfNothingOrSomethingElse_ListsWhatIsExpected()
    {
        var missing = await demo.RunAsync("export", Trial);
        var wrong = await demo.RunAsync("export", Trial, "--what", "everything");

        Assert.Equal((ExitCode.Failed, ExitCode.Failed), (missing.ExitCode, wrong.ExitCode));
        Assert.Contains("--what is missing; expected plot-means, sample-results or readings.", missing.Errors, StringComparison.Ordinal);
        Assert.Contains("--what is 'everything'; expected", wrong.Errors, StringComparison.Ordinal);
    }

    /// <summary>The result as it lies in the table, asked for without our code.</summary>
    private async Task<double> StoredGlucoseAsync(string plot, int pull)
    {
        await using var connection = new SqliteConnection($"Data Source={new LabOptions { DataFolder = demo.DataFolder }.WarehouseFile};Mode=ReadOnly");
        await connection.OpenAsync(Token);
        await using var command = connection.CreateCommand();
        command.CommandText =
            """
            select r.value from sample_result r join sample s on s.barcode = r.barcode join quantity q on q.quantity_id = r.quantity_id
            where s.trial_code = 'KT-NITRO-25' and s.plot_code = $plot and s.pull_no = $pull and q.name = 'glucose'
            """;
        command.Parameters.AddWithValue("$plot", plot);
        command.Parameters.AddWithValue("$pull", pull);
        return (double)(await command.ExecuteScalarAsync(Token))!;
    }
}
