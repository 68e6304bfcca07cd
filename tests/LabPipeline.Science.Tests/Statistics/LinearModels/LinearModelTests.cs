using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.LinearModels;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.LinearModels;

public sealed class LinearModelTests
{
    /// <summary>G_anova_tables.csv: base R (PlantGrowth, InsectSprays, npk), Gomez and Gomez 1984 p. 26, Ryder 1981; computed in R 4.2.2.</summary>
    [Theory]
    [InlineData("PlantGrowth", "weight ~ group", "PlantGrowth", "weight", "group=group")]
    [InlineData("InsectSprays_raw", "count ~ spray", "InsectSprays", "count", "spray=spray")]
    [InlineData("npk", "yield ~ block + N*P*K", "npk", "yield", "block=block", "N=N", "P=P", "K=K", "N:P=N:P", "N:K=N:K", "P:K=P:K", "N:P:K=N:P:K")]
    [InlineData("npk", "yield ~ block + N + K", "npk", "yield", "block=block", "N=N", "K=K")]
    [InlineData("gomez_seedrate", "yield ~ rep + rate", "gomez_seedrate", "yield", "rep=rep", "r=rate")]
    [InlineData("ryder_groundnut_swap:wet", "wet", "ryder_groundnut_swap", "wet", "block=block", "gen=gen")]
    [InlineData("ryder_groundnut_swap:dry", "dry", "ryder_groundnut_swap", "dry", "block=block", "gen=gen")]
    public void Anova_WhenOneError_AgreesWithPublishedTable(string set, string model, string data, string response, params string[] terms)
    {
        var pairs = terms.Select(term => term.Split('=')).ToArray();
        var fit = LinearModel.Fit(CheckData.Load(data, response, [.. pairs.SelectMany(pair => pair[1].Split(':')).Distinct()]),
            [.. pairs.Select(pair => Term.Of(pair[1].Split(':')))]);

        var table = fit.Anova(SumsOfSquares.Sequential);

        var expected = CheckData.AnovaRows(set, model, "");
        Assert.Equal(expected.Count, table.Rows.Count);
        foreach (var row in expected)
        {
            var name = pairs.SingleOrDefault(pair => pair[0] == row.Text("term"))?[1] ?? AnovaRow.Residual;
            CheckData.SameLine(row, table.Find(name));
        }
    }

    [Fact]
    public void Anova_WhenInteractionIsConfoundedWithBlocks_SaysSo()
    {
        var fit = LinearModel.Fit(CheckData.Load("npk", "yield", "block", "N", "P", "K"), [Term.Of("block"), .. Term.Factorial("N", "P", "K")]);

        var lost = Assert.Single(fit.Anova(SumsOfSquares.Sequential).NotEstimable);

        Assert.Equal("N:P:K", lost.Term);
        Assert.Equal(1, lost.LostDf);
        Assert.Contains("confounded", lost.Reason, StringComparison.Ordinal);
        Assert.All(fit.Means("N", "P", "K").Cells, cell => Assert.Null(cell.Value));
        Assert.NotNull(fit.Means("N", "K").Find("1:0").Value);
    }

    /// <summary>Square roots of InsectSprays counts, as in G_anova_tables.csv and G_means.csv (computed in R 4.2.2).</summary>
    [Fact]
    public void Anova_WhenCountsAreSquareRooted_AgreesWithPublishedTable()
    {
        var raw = CheckData.Load("InsectSprays", "count", "spray");
        var fit = LinearModel.Fit(new ModelData([.. raw.Response.Select(Math.Sqrt)], [.. raw.Factors]), Term.Of("spray"));

        CheckData.SameLine(CheckData.AnovaRows("InsectSprays_sqrt", "count", "")[0], fit.Anova(SumsOfSquares.Sequential).Find("spray"));
        foreach (var mean in ReferenceTable.Load("G_means.csv").Rows.Where(row => row.Text("dataset") == "InsectSprays_sqrt"))
        {
            CheckData.Near(mean.Number("mean"), fit.Means("spray").Find(mean.Text("level")).Value);
        }
    }

    /// <summary>Ryder 1981: two plots were exchanged in block 3; putting them right changes the conclusion (G_anova_tables.csv).</summary>
    [Theory]
    [InlineData("wet")]
    [InlineData("dry")]
    public void Anova_WhenSwappedPlotsArePutRight_AgreesWithPublishedTable(string response)
    {
        var rows = ReferenceTable.Load("G_data_ryder_groundnut_swap.csv").Rows;
        string Genotype(ReferenceRow row) => (row.Text("block"), row.Text("gen")) switch
        {
            ("B3", "A") => "B",
            ("B3", "B") => "A",
            _ => row.Text("gen"),
        };
        var data = new ModelData([.. rows.Select(row => row.Number(response))],
            [Factor.InOrderOfAppearance("block", [.. rows.Select(row => row.Text("block"))]), Factor.InOrderOfAppearance("gen", [.. rows.Select(Genotype)])]);

        var table = LinearModel.Fit(data, Term.Of("block"), Term.Of("gen")).Anova(SumsOfSquares.Sequential);

        var expected = CheckData.AnovaRows($"ryder_groundnut_swap:{response} after un-swapping A,B in block 3", response);
        Assert.Equal(3, expected.Count);
        CheckData.SameLine(expected[1], table.Find("gen"));
        CheckData.SameLine(expected[2], table.Find(AnovaRow.Residual));
    }

    /// <summary>G_diagnostics.csv: externally studentized residuals of the swapped plots (computed in R 4.2.2).</summary>
    [Theory]
    [InlineData("wet")]
    [InlineData("dry")]
    public void StudentizedResiduals_WhenPlotsWereSwapped_PointAtThem(string response)
    {
        var rows = ReferenceTable.Load("G_data_ryder_groundnut_swap.csv").Rows;
        var fit = LinearModel.Fit(CheckData.Load("ryder_groundnut_swap", response, "block", "gen"), Term.Of("block"), Term.Of("gen"));

        var expected = ReferenceTable.Load("G_diagnostics.csv").Rows.Where(row => row.Text("dataset") == $"ryder_groundnut_swap:{response}").ToArray();

        Assert.Equal(3, expected.Length);
        foreach (var row in expected)
        {
            var plot = row.Text("test").Split(' ')[^2..];
            var index = rows.ToList().FindIndex(entry => entry.Text("gen") == plot[0] && entry.Text("block") == plot[1]);
            CheckData.Near(row.Number("statistic"), fit.StudentizedResiduals[index]);
        }
    }

    /// <summary>G_correlations.csv: slope, intercept and residual SD of base R's anscombe, cars, women, swiss (computed in R 4.2.2).</summary>
    [Theory]
    [InlineData("anscombe1", "anscombe", "y1", "x1")]
    [InlineData("anscombe2", "anscombe", "y2", "x2")]
    [InlineData("anscombe3", "anscombe", "y3", "x3")]
    [InlineData("anscombe4", "anscombe", "y4", "x4")]
    [InlineData("cars speed-dist", "cars", "dist", "speed")]
    [InlineData("women height-weight", "women", "weight", "height")]
    [InlineData("swiss Fertility-Education", "swiss", "Education", "Fertility")]
    public void Coefficients_WhenRegression_AgreeWithPublishedLine(string name, string set, string response, string covariate)
    {
        var expected = ReferenceTable.Load("G_correlations.csv").Find("dataset", name);

        var fit = LinearModel.Fit(CheckData.LoadRegression(set, response, covariate), Term.Of(covariate));

        CheckData.Near(expected.Number("slope"), fit.Coefficients[1].Estimate!.Estimate);
        CheckData.Near(expected.Number("intercept"), fit.Coefficients[0].Estimate!.Estimate);
        CheckData.Near(expected.Number("resid_SD"), Math.Sqrt(fit.ResidualMeanSquare));
        CheckData.Near(expected.Number("t"), fit.Coefficients[1].Estimate!.T);
        CheckData.Near(expected.Number("p_pearson"), fit.Coefficients[1].Estimate!.P, 1e-7);
        Assert.Equal(expected.Count("df"), fit.ResidualDf);
    }

    /// <summary>
    /// NIST StRD one-way sets. The digits asked for are those the stored doubles can hold: the doubles nearest to the 13-digit data of SmLs07 have themselves F = 21.04 (two exact passes).
    /// </summary>
    [Theory]
    [InlineData("SiRstv", 1e-11)]
    [InlineData("AtmWtAg", 1e-8)]
    [InlineData("SmLs01", 1e-12)]
    [InlineData("SmLs04", 1e-9)]
    [InlineData("SmLs07", 2.5e-3)]
    public void Anova_WhenOffsetIsLarge_AgreesWithCertifiedValues(string set, double relative)
    {
        var rows = ReferenceTable.Load($"G_nist_strd/{set}.csv").Rows;
        var data = new ModelData([.. rows.Select(row => row.Number("response"))], [Factor.InOrderOfAppearance("treatment", [.. rows.Select(row => row.Text("treatment"))])]);

        var line = LinearModel.Fit(data, Term.Of("treatment")).Anova(SumsOfSquares.Sequential).Find("treatment");

        CheckData.Near(ReferenceTable.Load("G_nist_strd_certified.csv").Find("dataset", set).Number("F_certified"), line.F, relative);
    }

    /// <summary>G_means.csv (balanced sets: adjusted and raw means agree) and the CV of Gomez and Gomez 1984 in its note.</summary>
    [Theory]
    [InlineData("npk", "npk", "yield", "block", "N", "N")]
    [InlineData("npk", "npk", "yield", "block", "K", "K")]
    [InlineData("npk", "npk", "yield", "block", "N:K", "N:K")]
    [InlineData("gomez_seedrate", "gomez_seedrate", "yield", "rep", "rate", "rate")]
    [InlineData("PlantGrowth", "PlantGrowth", "weight", null, "group", "group")]
    [InlineData("InsectSprays_raw", "InsectSprays", "count", null, "spray", "spray")]
    public void Means_WhenBalanced_AgreeWithPublishedMeans(string set, string data, string response, string? block, string term, string label)
    {
        var factors = term.Split(':');
        Term[] terms = [.. block is null ? [] : new[] { Term.Of(block) }, .. Term.Factorial(factors)];
        var fit = LinearModel.Fit(CheckData.Load(data, response, [.. block is null ? [] : new[] { block }, .. factors]), terms);

        var expected = ReferenceTable.Load("G_means.csv").Rows.Where(row => row.Text("dataset") == set && row.Text("factor") == label).ToArray();

        Assert.Equal(fit.Means(factors).Cells.Count, expected.Length);
        foreach (var row in expected)
        {
            var cell = fit.Means(factors).Find(row.Text("level"));
            CheckData.Near(row.Number("mean"), cell.Value);
            Assert.Equal(row.Count("n"), cell.Count);
        }
    }

    [Fact]
    public void CoefficientOfVariation_WhenSeedRates_IsAsPublished() =>
        CheckData.Near(6.70425774562, LinearModel.Fit(CheckData.Gomez(), Term.Of("rep"), Term.Of("rate")).CoefficientOfVariation); // G_means.csv, note of gomez_seedrate

    /// <summary>G_sed_lsd.csv: SED, df and LSD at 5 and 1 % (computed in R 4.2.2).</summary>
    [Theory]
    [InlineData("npk", "N means", "npk", "yield", "N", "0", "1", "block", "N", "K")]
    [InlineData("npk", "K means", "npk", "yield", "K", "0", "1", "block", "N", "K")]
    [InlineData("gomez_seedrate", "rate means", "gomez_seedrate", "yield", "rate", "25", "150", "rep", "rate")]
    [InlineData("PlantGrowth", "group means", "PlantGrowth", "weight", "group", "ctrl", "trt2", "group")]
    public void Difference_WhenBalanced_HasThePublishedSed(string set, string comparison, string data, string response, string factor, string first, string second, params string[] terms)
    {
        var expected = ReferenceTable.Load("G_sed_lsd.csv").Rows.Single(row => row.Text("dataset") == set && row.Text("comparison") == comparison);

        var difference = LinearModel.Fit(CheckData.Load(data, response, terms), [.. terms.Select(term => Term.Of(term))]).Means(factor).Difference(first, second);

        CheckData.Near(expected.Number("SED"), difference.StandardError);
        CheckData.Near(expected.Number("df"), difference.Df);
        CheckData.Near(expected.Number("LSD_5pct"), difference.LeastSignificantDifference(0.05));
        CheckData.Near(expected.Number("LSD_1pct"), difference.LeastSignificantDifference(0.01));
    }

    /// <summary>G_trend_contrasts.csv: polynomial contrasts of the seed rates (computed in R 4.2.2).</summary>
    [Fact]
    public void Contrast_WhenTrendCoefficientsAreGiven_AgreesWithPublishedTrends()
    {
        var means = LinearModel.Fit(CheckData.Gomez(), Term.Of("rep"), Term.Of("rate")).Means("rate");
        var expected = ReferenceTable.Load("G_trend_contrasts.csv").Rows.Where(row => row.Text("dataset") == "gomez_seedrate").ToArray();

        Assert.Equal(5, expected.Length);
        foreach (var row in expected)
        {
            var trend = means.Contrast(row.Numbers("coef_orthonormal"));
            CheckData.Near(row.Number("estimate_orthonormal"), trend.Estimate);
            CheckData.Near(row.Number("SE"), trend.StandardError);
            CheckData.Near(row.Number("p"), trend.P, 1e-7);
        }
    }
}
