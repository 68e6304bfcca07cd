using System.Globalization;
using LabPipeline.Science.Statistics.LinearModels;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.LinearModels;

/// <summary>G_missing_plots.csv: Gomez and Gomez 1984 without plot rate 100, R2 (Yates 1933 formula; exact least squares and emmeans 1.8.4 in R).</summary>
public sealed class MissingPlotTests
{
    private static readonly LinearFit Fit = LinearModel.Fit(CheckData.Gomez(withoutOne: true), Term.Of("rep"), Term.Of("rate"));

    private static double Expected(string quantity) => ReferenceTable.Load("G_missing_plots.csv").Find("quantity", quantity).Number("value");

    [Fact]
    public void Predict_WhenThePlotIsMissing_EqualsTheYatesEstimate() =>
        CheckData.Near(Expected("Yates estimate X=(rB+tT-G)/((r-1)(t-1))"), Fit.Predict(new Dictionary<string, string> { ["rep"] = "R2", ["rate"] = "100" }).Estimate);

    [Theory]
    [InlineData(SumsOfSquares.Sequential)]
    [InlineData(SumsOfSquares.TypeTwo)]
    [InlineData(SumsOfSquares.TypeThree)]
    public void Anova_WhenAPlotIsMissing_AgreesWithExactLeastSquares(SumsOfSquares kind)
    {
        var table = Fit.Anova(kind);

        CheckData.Near(Expected("treatment SS from lm (drop1)"), table.Find("rate").SumOfSquares);
        CheckData.Near(Expected("treatment F (5,14 df)"), table.Find("rate").F);
        CheckData.Near(Expected("treatment p"), table.Find("rate").P, 1e-7);
        CheckData.Near(Expected("MSE (14 df)"), Fit.ResidualMeanSquare);
        CheckData.Near(Expected("error SS with X inserted (df 14)"), Fit.ResidualSumOfSquares);
    }

    [Fact]
    public void Anova_WhenAPlotIsMissing_AgreesWithThePublishedSequentialTable()
    {
        foreach (var row in CheckData.AnovaRows("gomez_seedrate_missing(rate100,R2)", "yield"))
        {
            CheckData.SameLine(row, Fit.Anova(SumsOfSquares.Sequential).Find(row.Text("term") switch { "r" => "rate", "Residuals" => AnovaRow.Residual, var name => name }));
        }
    }

    /// <summary>Yates' correction: the treatment sum of squares with the estimate inserted is too large by the stated bias.</summary>
    [Fact]
    public void Anova_WhenTheEstimateIsInserted_IsBiasedByTheYatesAmount()
    {
        var full = CheckData.Gomez();
        var missing = full.Response.ToList().IndexOf(Expected("observed value removed"));
        var inserted = new ModelData([.. full.Response.Select((value, row) => row == missing ? Expected("Yates estimate X=(rB+tT-G)/((r-1)(t-1))") : value)], [.. full.Factors]);

        var biased = LinearModel.Fit(inserted, Term.Of("rep"), Term.Of("rate")).Anova(SumsOfSquares.Sequential).Find("rate").SumOfSquares;

        CheckData.Near(Expected("treatment SS with X inserted (biased up)"), biased);
        CheckData.Near(Expected("bias (B-(t-1)X)^2/(t(t-1))"), biased - Expected("corrected treatment SS"), 1e-7); // a difference of two values given to 12 digits
    }

    [Theory]
    [InlineData("25")]
    [InlineData("50")]
    [InlineData("75")]
    [InlineData("100")]
    [InlineData("125")]
    [InlineData("150")]
    public void Means_WhenAPlotIsMissing_AreAdjustedForItsBlock(string rate)
    {
        var row = ReferenceTable.Load("G_missing_plots.csv").Find("quantity", $"adjusted mean (emmean) rate {rate}");

        var cell = Fit.Means("rate").Find(rate);

        CheckData.Near(row.Number("value"), cell.Value);
        CheckData.Near(double.Parse(row.Text("note").Split(' ')[1], CultureInfo.InvariantCulture), cell.Estimate!.StandardError);
        Assert.Equal(rate == "100" ? 3 : 4, cell.Count);
        Assert.Equal(rate != "100", Math.Abs(Expected($"raw mean rate {rate}") - cell.Value!.Value) < 1e-6);
    }

    [Fact]
    public void Difference_WhenAPlotIsMissing_HasTheLargerSed()
    {
        var means = Fit.Means("rate");

        CheckData.Near(Expected("emmeans SED rate100-rate125 (exact)"), means.Difference("100", "125").StandardError);
        CheckData.Near(Expected("SED missing-vs-other treatment (Yates) sqrt(MSE(2/r+t/(r(r-1)(t-1))))"), means.Difference("100", "25").StandardError);
        CheckData.Near(Expected("SED of two complete treatments sqrt(2MSE/r)"), means.Difference("150", "125").StandardError);
    }
}
