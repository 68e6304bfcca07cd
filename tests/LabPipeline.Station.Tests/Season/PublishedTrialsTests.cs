using System.Globalization;
using System.Text.Json.Nodes;
using LabPipeline.Testing;

namespace LabPipeline.Station.Tests.Season;

/// <summary>Published data dropped as instrument files; the printed tables against tables computed in R 4.2.2 (G_anova_tables, G_means, G_sed_lsd).</summary>
public sealed class PublishedTrialsTests
{
    /// <summary>Yates 1935, complex experiments: oat varieties on main plots, nitrogen within them.</summary>
    [Fact]
    public async Task SplitPlot_OnYatesOats_PrintsTheReferenceTables()
    {
        using var trial = await DroppedTrial.CreateAsync(
            Design("split-plot", [("variety", ["Victory", "Golden.rain", "Marvellous"]), ("nitrogen", ["0.0cwt", "0.2cwt", "0.4cwt", "0.6cwt"])], "variety", ("mainPlot", "variety"), ReferenceBlocks("G_data_yates_oats.csv")),
            [.. ReferenceTable.Load("G_data_yates_oats.csv").Rows.Select((row, index) => (Plot(row, index, ["variety", "nitrogen"], row.Text("variety")), row.Text("yield")))]);

        var printed = await trial.RunAsync("season", "table", DroppedTrial.Code, "--quantity", "fry_yield");

        var expected = ReferenceTable.Load("G_anova_tables.csv").Rows.Where(row => row.Text("dataset") == "yates_oats" && row.Text("model").Contains("Error(B/V)", StringComparison.Ordinal)).ToList();
        Assert.Equal(6, expected.Count);
        Assert.All(expected, row => Agrees(row, printed, Stratum(row.Text("stratum")), row.Text("term").Replace("V", "variety", StringComparison.Ordinal).Replace("N", "nitrogen", StringComparison.Ordinal)));
        foreach (var mean in ReferenceTable.Load("G_means.csv").Rows.Where(row => row.Text("dataset") == "yates_oats"))
        {
            Assert.Contains($"{mean.Text("level")} │ {mean.Text("n")}", Squeeze(printed), StringComparison.Ordinal);
            Assert.Contains(Printed(mean.Number("mean"), 5), printed, StringComparison.Ordinal);
        }

        var sed = ReferenceTable.Load("G_sed_lsd.csv").Rows.Where(row => row.Text("dataset") == "yates_oats").ToDictionary(row => row.Text("comparison"));
        Assert.Contains($"variety: SED {Printed(sed["two V means (main plots)"].Number("SED"), 4)} on 10 df, LSD {Printed(sed["two V means (main plots)"].Number("LSD_5pct"), 4)}", printed, StringComparison.Ordinal);
        Assert.Contains($"nitrogen: SED {Printed(sed["two N means (sub-plots)"].Number("SED"), 4)} on 45 df, LSD {Printed(sed["two N means (sub-plots)"].Number("LSD_5pct"), 4)}", printed, StringComparison.Ordinal);
        Assert.Contains($"variety:nitrogen: SED {Printed(sed["two V at same or different N"].Number("SED"), 4)} on 30.2 df", printed, StringComparison.Ordinal);
    }

    /// <summary>
    /// The linear part of nitrogen in Yates' oats as a planned contrast: Venables and Ripley 2002, section 10.2, print N: L with F 110.32 (from memory);
    /// estimate, SE, t, p and limits from R 4.2.2: sum(c(-3, -1, 1, 3) * tapply(Y, N, mean)), sqrt(177.0833 * 20 / 18) on 45 df.
    /// The second mixes errors of main plots and plots: SED and df as in G_sed_lsd.csv, two varieties at one nitrogen.
    /// </summary>
    [Fact]
    public async Task PlannedContrasts_OnYatesOats_AgreeWithTheLinearPartOfNitrogen()
    {
        using var trial = await DroppedTrial.CreateAsync(
            Design("split-plot", [("variety", ["Victory", "Golden.rain", "Marvellous"]), ("nitrogen", ["0.0cwt", "0.2cwt", "0.4cwt", "0.6cwt"])], "variety", ("mainPlot", "variety"), ReferenceBlocks("G_data_yates_oats.csv")),
            [.. ReferenceTable.Load("G_data_yates_oats.csv").Rows.Select((row, index) => (Plot(row, index, ["variety", "nitrogen"], row.Text("variety")), row.Text("yield")))],
            (JsonArray)JsonNode.Parse("""
                [{ "name": "rise", "factors": ["nitrogen"], "coefficients": { "0.0cwt": -3, "0.2cwt": -1, "0.4cwt": 1, "0.6cwt": 3 } },
                 { "name": "bare", "factors": ["variety", "nitrogen"], "coefficients": { "Marvellous:0.0cwt": 1, "Victory:0.0cwt": -1 } }]
                """)!);

        var printed = await trial.RunAsync("season", "table", DroppedTrial.Code, "--quantity", "fry_yield");

        Assert.Contains("rise │ 147.33 │ 14.027 │ 45 │ 10.503 │ 1.091E-13 │ 119.08 to 175.59", Squeeze(printed), StringComparison.Ordinal);
        var sed = ReferenceTable.Load("G_sed_lsd.csv").Rows.Single(row => row.Text("dataset") == "yates_oats" && row.Text("comparison") == "two V at same or different N");
        Assert.Matches($@"bare │ [\d.−]+ │ {Printed(sed.Number("SED"), 5)} │ 30\.2 │", Squeeze(printed));
    }

    /// <summary>Venables and Ripley 2002: peas, three factors in six incomplete blocks; the three-factor interaction is confounded with blocks.</summary>
    [Fact]
    public async Task FactorialBlocks_OnNpk_PrintTheReferenceTableAndSayWhatIsConfounded()
    {
        using var trial = await DroppedTrial.CreateAsync(
            Design("factorial-rcbd", [("N", ["0", "1"]), ("P", ["0", "1"]), ("K", ["0", "1"])], "N", ("incomplete", "each block holds one half of the treatments"), ReferenceBlocks("G_data_npk.csv")),
            [.. ReferenceTable.Load("G_data_npk.csv").Rows.Select((row, index) => (Plot(row, index, ["N", "P", "K"], null), row.Text("yield")))]);

        var printed = await trial.RunAsync("season", "table", DroppedTrial.Code, "--quantity", "fry_yield");

        var expected = ReferenceTable.Load("G_anova_tables.csv").Rows.Where(row => row.Text("dataset") == "npk" && row.Text("model").Contains("fixed blocks", StringComparison.Ordinal)).ToList();
        Assert.Equal(8, expected.Count);
        Assert.All(expected, row => Agrees(row, printed, "", row.Text("term")));
        Assert.Contains("N:P:K", printed, StringComparison.Ordinal);
        Assert.Contains("confounded", printed, StringComparison.Ordinal);
    }

    private static void Agrees(ReferenceRow row, string printed, string stratum, string term)
    {
        var cells = DroppedTrial.LineOf(printed, stratum, term is "Residuals" ? "Residual" : term);
        Assert.Equal((row.Text("df"), Printed(row.Number("sum_sq"), 6), Printed(row.Number("mean_sq"), 6)), (cells[0], cells[1], cells[2]));
        if (row.Has("F"))
        {
            Assert.Equal((Printed(row.Number("F"), 5), row.Number("p") < 0.001 ? "< 0.001" : Printed(row.Number("p"), 3)), (cells[3], cells[4]));
        }
    }

    /// <summary>The reference rounded to as many significant digits as the table shows.</summary>
    private static string Printed(double value, int digits)
    {
        var decimals = digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        return decimals >= 0
            ? value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
            : value.ToString("G" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    private static string Squeeze(string text) => string.Join(' ', text.Split(' ', StringSplitOptions.RemoveEmptyEntries));

    private static string Stratum(string reference) => reference switch { "B" => "block", "B:V" => "main plot", _ => reference };

    private static string[] ReferenceBlocks(string file) => [.. ReferenceTable.Load(file).Rows.Select(row => row.Text("block")).Distinct()];

    private static JsonObject Design(string kind, (string Name, string[] Levels)[] factors, string clone, (string Name, string Value) extra, string[] blocks) => new()
    {
        ["kind"] = kind,
        ["blocks"] = Texts(blocks),
        ["factors"] = new JsonArray([.. factors.Select(factor => new JsonObject { ["name"] = factor.Name, ["levels"] = Texts(factor.Levels) })]),
        ["clone"] = clone,
        [extra.Name] = extra.Value,
    };

    private static JsonObject Plot(ReferenceRow row, int index, string[] factors, string? mainPlot)
    {
        var levels = new JsonObject();
        foreach (var factor in factors)
        {
            levels[factor] = row.Text(factor);
        }

        var plot = new JsonObject { ["plot"] = (101 + index).ToString(CultureInfo.InvariantCulture), ["block"] = row.Text("block"), ["bay"] = "B1", ["levels"] = levels };
        if (mainPlot is not null)
        {
            plot["mainPlot"] = $"{row.Text("block")}-{mainPlot}";
        }

        return plot;
    }

    private static JsonArray Texts(string[] texts) => new([.. texts.Select(text => (JsonNode)text)]);
}
