using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Designs;
using LabPipeline.Science.Statistics.LinearModels;
using LabPipeline.Science.Tests.Statistics.LinearModels;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.Designs;

public sealed class StratifiedAnovaTests
{
    private static readonly Term[] OatUnits = [Term.Of("block"), Term.Of("block", "variety")];

    private static StratifiedFit Oats() => StratifiedAnova.Fit(CheckData.Oats(), Term.Factorial("variety", "nitrogen"), OatUnits);

    /// <summary>Yates 1935 oats (MASS), computed in R 4.2.2 with Error(B/V).</summary>
    [Theory]
    [InlineData("B", "Residuals", "block", "Residual")]
    [InlineData("B:V", "V", "block:variety", "variety")]
    [InlineData("B:V", "Residuals", "block:variety", "Residual")]
    [InlineData("Within", "N", "Within", "nitrogen")]
    [InlineData("Within", "V:N", "Within", "variety:nitrogen")]
    [InlineData("Within", "Residuals", "Within", "Residual")]
    public void Table_WhenSplitPlot_AgreesWithPublishedStrata(string stratum, string term, string ownStratum, string ownTerm)
    {
        var expected = CheckData.AnovaRows("yates_oats", "Y ~ V*N + Error(B/V)", stratum).Single(row => row.Text("term") == term);

        CheckData.SameLine(expected, Oats().Table.Find(ownTerm, ownStratum));
    }

    [Fact]
    public void Table_WhenSplitPlot_NeverTestsTheMainPlotFactorAgainstSubplots()
    {
        var wrong = CheckData.AnovaRows("yates_oats", "Y ~ B*V").Single(row => row.Text("term") == "V");
        Assert.Contains("WRONG", wrong.Text("note"), StringComparison.Ordinal);

        var lines = Oats().Table.Rows.Where(row => row.Term == "variety").ToArray();

        Assert.Equal("block:variety residual", Assert.Single(lines).TestedAgainst);
        Assert.All(Oats().Table.Rows.Where(row => row.F is not null), row => Assert.True(Math.Abs(row.F!.Value - wrong.Number("F")) > 1));
    }

    /// <summary>Grover and Rai 2010 (agridat): plots are the units of treatments, tillers only subsamples.</summary>
    [Fact]
    public void Table_WhenPlotsAreSubsampled_TestsTreatmentsAgainstPlots()
    {
        var fit = StratifiedAnova.Fit(CheckData.Load("grover_rcbd_subsample", "tiller", "block", "trt"), [Term.Of("trt")], [Term.Of("block"), Term.Of("block", "trt")]);

        var expected = CheckData.AnovaRows("grover_rcbd_subsample", "tiller ~ trt + Error(block/trt)");

        Assert.Equal(4, expected.Count);
        foreach (var row in expected)
        {
            CheckData.SameLine(row, fit.Table.Find(row.Text("term") == "trt" ? "trt" : AnovaRow.Residual, row.Text("stratum")));
        }

        Assert.Equal(7.5, Math.Round(fit.Table.Find("trt", "block:trt").F!.Value, 1));
        CheckData.Near(SedRow("grover_rcbd_subsample", "trt means").Number("SED"), fit.Means("trt").Difference("T1", "T9").StandardError);
        foreach (var row in ReferenceTable.Load("G_means.csv").Rows.Where(row => row.Text("dataset") == "grover_rcbd_subsample"))
        {
            CheckData.Near(row.Number("mean"), fit.Means("trt").Find(row.Text("level")).Value);
        }

        var wrong = CheckData.AnovaRows("grover_rcbd_subsample", "tiller ~ block + trt + block:trt").Single(row => row.Text("term") == "trt");
        Assert.DoesNotContain(fit.Table.Rows, row => row.F > wrong.Number("F") - 1);
    }

    [Fact]
    public void Table_WhenPlotMeansAreUsed_GivesTheSameFAsThePlotStratum()
    {
        var rows = ReferenceTable.Load("G_data_grover_rcbd_subsample.csv").Rows.GroupBy(row => (Block: row.Text("block"), Treatment: row.Text("trt"))).ToArray();
        var data = new ModelData([.. rows.Select(plot => plot.Average(row => row.Number("tiller")))],
            [Factor.InOrderOfAppearance("block", [.. rows.Select(plot => plot.Key.Block)]), Factor.InOrderOfAppearance("trt", [.. rows.Select(plot => plot.Key.Treatment)])]);

        var table = LinearModel.Fit(data, Term.Of("block"), Term.Of("trt")).Anova(SumsOfSquares.Sequential);

        foreach (var row in CheckData.AnovaRows("grover_rcbd_subsample", "plot means"))
        {
            CheckData.SameLine(row, table.Find(row.Text("term") == "Residuals" ? AnovaRow.Residual : row.Text("term")));
        }
    }

    /// <summary>Venables and Ripley's npk: N:P:K is confounded with blocks and tested there.</summary>
    [Fact]
    public void Table_WhenAnInteractionIsConfoundedWithBlocks_TestsItAmongBlocks()
    {
        var fit = StratifiedAnova.Fit(CheckData.Load("npk", "yield", "block", "N", "P", "K"), Term.Factorial("N", "P", "K"), [Term.Of("block")]);

        var expected = CheckData.AnovaRows("npk", "yield ~ N*P*K + Error(block)");

        Assert.Equal(fit.Table.Rows.Count, expected.Count);
        foreach (var row in expected)
        {
            CheckData.SameLine(row, fit.Table.Find(row.Text("term") == "Residuals" ? AnovaRow.Residual : row.Text("term"), row.Text("stratum")));
        }

        Assert.Equal("block residual", fit.Table.Find("N:P:K", "block").TestedAgainst);
    }

    /// <summary>Potthoff and Roy 1964 (nlme): 16 and 11 subjects, sequential, split-plot in time.</summary>
    [Fact]
    public void Table_WhenSplitPlotInTime_AgreesWithPublishedStrata()
    {
        var fit = Orthodont(SumsOfSquares.Sequential);

        foreach (var row in CheckData.AnovaRows("orthodont_repeated", "distance"))
        {
            CheckData.SameLine(row, fit.Table.Find(OwnName(row.Text("term")), row.Text("stratum") == "Subject" ? "subject" : Stratum.Within));
        }
    }

    /// <summary>G_rm_orthodont_univariate_type3.csv (car 3.1-1): the marginal table of the same data.</summary>
    [Theory]
    [InlineData("Sex", "subject")]
    [InlineData("A", Stratum.Within)]
    [InlineData("Sex:A", Stratum.Within)]
    public void Table_WhenMarginal_AgreesWithPublishedTypeThree(string term, string stratum)
    {
        var expected = ReferenceTable.Load("G_rm_orthodont_univariate_type3.csv").Find("term", term);

        var row = Orthodont(SumsOfSquares.TypeThree).Table.Find(OwnName(term), stratum);

        CheckData.Near(expected.Number("SS"), row.SumOfSquares);
        CheckData.Near(expected.Number("F"), row.F);
        CheckData.Near(expected.Number("p"), row.P, 1e-7);
        CheckData.Near(expected.Number("den_df"), row.DenominatorDf);
        Assert.Equal(expected.Count("num_df"), row.Df);
    }

    /// <summary>G_sed_lsd.csv: the four SEDs of a split-plot, Satterthwaite df, and the Cochran-Cox t in the note.</summary>
    [Theory]
    [InlineData("two V means (main plots)", "variety", "Victory", "Marvellous")]
    [InlineData("two N means (sub-plots)", "nitrogen", "0.0cwt", "0.6cwt")]
    [InlineData("two N at same V", "variety:nitrogen", "Victory:0.0cwt", "Victory:0.6cwt")]
    [InlineData("two V at same or different N", "variety:nitrogen", "Victory:0.0cwt", "Marvellous:0.0cwt")]
    [InlineData("two V at same or different N", "variety:nitrogen", "Victory:0.0cwt", "Marvellous:0.4cwt")]
    public void Difference_WhenSplitPlot_HasThePublishedSed(string comparison, string term, string first, string second)
    {
        var expected = SedRow("yates_oats", comparison);

        var difference = Oats().Means(term.Split(':')).Difference(first, second);

        CheckData.Near(expected.Number("SED"), difference.StandardError);
        CheckData.Near(expected.Number("df"), difference.Df);
        CheckData.Near(expected.Number("LSD_5pct"), difference.LeastSignificantDifference(0.05));
        CheckData.Near(expected.Number("LSD_1pct"), difference.LeastSignificantDifference(0.01));
        if (difference.Parts.Count > 1)
        {
            CheckData.Near(2.12774304419, difference.CochranCoxT(0.05)); // G_sed_lsd.csv, note of this row
            CheckData.Near(20.6710771101, difference.CochranCoxT(0.05) * difference.StandardError);
        }
    }

    [Theory]
    [InlineData("V", "variety")]
    [InlineData("N", "nitrogen")]
    [InlineData("V:N", "variety:nitrogen")]
    public void Means_WhenSplitPlot_AgreeWithPublishedMeans(string label, string term)
    {
        foreach (var row in ReferenceTable.Load("G_means.csv").Rows.Where(row => row.Text("dataset") == "yates_oats" && row.Text("factor") == label))
        {
            CheckData.Near(row.Number("mean"), Oats().Means(term.Split(':')).Find(row.Text("level")).Value);
        }
    }

    /// <summary>G_trend_contrasts.csv, nitrogen of the oats: tested against sub-plots.</summary>
    [Fact]
    public void Contrast_WhenTrendOfASubplotFactor_AgreesWithPublishedTrend()
    {
        foreach (var row in ReferenceTable.Load("G_trend_contrasts.csv").Rows.Where(row => row.Text("dataset") == "yates_oats N"))
        {
            var trend = Oats().Means("nitrogen").Contrast(row.Numbers("coef_orthonormal"));
            CheckData.Near(row.Number("estimate_orthonormal"), trend.Estimate);
            CheckData.Near(row.Number("SE"), trend.StandardError);
            CheckData.Near(row.Number("df_error"), trend.Df);
        }
    }

    [Fact]
    public void Means_WhenAPlotIsMissing_AreRefusedWithTheReason()
    {
        var fit = StratifiedAnova.Fit(CheckData.Oats(withoutOne: true), Term.Factorial("variety", "nitrogen"), OatUnits);

        Assert.False(fit.IsOrthogonal);
        Assert.Contains("mixed model", Assert.Throws<NotEstimableException>(() => fit.Means("variety")).Why, StringComparison.Ordinal);
        Assert.Contains(fit.NotEstimable, entry => entry.Reason.Contains("divided between the strata", StringComparison.Ordinal));
    }

    /// <summary>G_variance_components.csv, expected mean squares of the oats.</summary>
    [Fact]
    public void VarianceComponents_WhenBalanced_AgreeWithPublishedEstimators()
    {
        var components = VarianceComponents.FromMeanSquares(CheckData.Oats(), Oats(), OatUnits);

        foreach (var row in ReferenceTable.Load("G_variance_components.csv").Rows.Where(row => row.Text("model") == "expected-mean-square estimators"))
        {
            var unit = row.Text("component") switch { "B" => "block", "B:V" => "block:variety", _ => Stratum.Within };
            CheckData.Near(row.Number("variance"), components.Single(component => component.Unit == unit).Variance);
        }
    }

    internal static StratifiedFit Orthodont(SumsOfSquares kind) =>
        StratifiedAnova.Fit(CheckData.Load("orthodont_repeated", "distance", "subject", "sex", "age"), Term.Factorial("sex", "age"), [Term.Of("subject")], kind);

    internal static string OwnName(string term) => term switch { "Sex" => "sex", "A" => "age", "Sex:A" => "sex:age", _ => AnovaRow.Residual };

    private static ReferenceRow SedRow(string set, string comparison) =>
        ReferenceTable.Load("G_sed_lsd.csv").Rows.Single(row => row.Text("dataset") == set && row.Text("comparison") == comparison);
}
