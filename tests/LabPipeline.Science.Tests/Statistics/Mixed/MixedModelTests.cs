using System.Globalization;
using LabPipeline.Science.Statistics.LinearModels;
using LabPipeline.Science.Statistics.Mixed;
using LabPipeline.Science.Tests.Statistics.LinearModels;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.Mixed;

public sealed class MixedModelTests
{
    /// <summary>The readme of the check values: REML values from lme4 and nlme are good to about 1e-5 relative.</summary>
    private const double Reml = 1e-5;

    private static readonly Term[] OatUnits = [Term.Of("block"), Term.Of("block", "variety")];

    private static MixedFit Oats(bool withoutOne) =>
        MixedModel.Fit(CheckData.Oats(withoutOne), Term.Factorial("variety", "nitrogen"), OatUnits);

    /// <summary>G_rm_orthodont_covariance.csv: nlme 3.1-162 on Potthoff and Roy 1964, four covariance models.</summary>
    [Theory]
    [InlineData("AR(1) (gls)")]
    [InlineData("compound symmetry (gls)")]
    [InlineData("random intercept (lme)")]
    [InlineData("unstructured (gls)")]
    public void Fit_WhenPullsAreRepeated_AgreesWithPublishedLikelihood(string structure)
    {
        var expected = ReferenceTable.Load("G_rm_orthodont_covariance.csv").Find("structure", structure);

        var fit = Orthodont(structure);

        CheckData.Near(expected.Number("REML_logLik"), fit.LogLikelihood, 1e-8);
        CheckData.Near(expected.Number("AIC"), fit.Aic, 1e-8);
        CheckData.Near(expected.Number("BIC"), fit.Bic, 1e-8);
        var numbers = expected.Text("parameter").Split(' ').Where(word => double.TryParse(word, CultureInfo.InvariantCulture, out _)).Select(word => double.Parse(word, CultureInfo.InvariantCulture)).ToArray();
        Assert.Equal(structure.StartsWith("unstructured", StringComparison.Ordinal) ? 0 : 2, numbers.Length);
        foreach (var (published, own) in numbers.Zip(Published(structure, fit)))
        {
            CheckData.Near(published, own, Reml);
        }
    }

    /// <summary>G_variance_components.csv: lme4 1.1-31 on Yates 1935 and on Grover and Rai 2010.</summary>
    [Theory]
    [InlineData("yates_oats", "B", "variance of block")]
    [InlineData("yates_oats", "B:V", "variance of block:variety")]
    [InlineData("yates_oats", "Residual", "residual variance")]
    [InlineData("yates_oats_missing(III,Victory,0.4cwt)", "B", "variance of block")]
    [InlineData("yates_oats_missing(III,Victory,0.4cwt)", "B:V", "variance of block:variety")]
    [InlineData("yates_oats_missing(III,Victory,0.4cwt)", "Residual", "residual variance")]
    [InlineData("grover_rcbd_subsample", "block", "variance of block")]
    [InlineData("grover_rcbd_subsample", "block:trt", "variance of block:trt")]
    [InlineData("grover_rcbd_subsample", "Residual", "residual variance")]
    public void Fit_WhenUnitsAreRandom_AgreesWithPublishedComponents(string set, string component, string own)
    {
        var expected = ReferenceTable.Load("G_variance_components.csv").Rows.Single(row =>
            row.Text("dataset") == set && row.Text("model").StartsWith("lmer", StringComparison.Ordinal) && row.Text("component") == component);

        var fit = set.StartsWith("grover", StringComparison.Ordinal)
            ? MixedModel.Fit(CheckData.Load("grover_rcbd_subsample", "tiller", "block", "trt"), [Term.Of("trt")], [Term.Of("block"), Term.Of("block", "trt")])
            : Oats(set.Contains("missing", StringComparison.Ordinal));

        CheckData.Near(expected.Number("variance"), fit.CovarianceParameter(own), Reml);
    }

    [Fact]
    public void Fit_WhenSplitPlot_AgreesWithPublishedLikelihood() =>
        CheckData.Near(ReferenceTable.Load("G_variance_components.csv").Find("component", "logLik").Number("variance"), Oats(false).LogLikelihood, 1e-8);

    /// <summary>G_variance_components.csv, Kenward-Roger rows of the balanced split-plot: F as in the strata, df 10 and 45.</summary>
    [Theory]
    [InlineData("V:", "variety")]
    [InlineData("N:", "nitrogen")]
    [InlineData("V:N:", "variety:nitrogen")]
    public void Tests_WhenBalanced_KenwardRogerEqualsTheStrata(string label, string term)
    {
        var expected = ReferenceTable.Load("G_variance_components.csv").Rows.Single(row => row.Text("component").StartsWith(label + " F", StringComparison.Ordinal));

        foreach (var method in Enum.GetValues<DegreesOfFreedom>())
        {
            var row = Oats(false).Tests(method).Find(term);
            CheckData.Near(expected.Number("variance"), row.F, Reml);
            CheckData.Near(expected.Number("sd"), row.DenominatorDf, Reml);
        }
    }

    /// <summary>G_anova_tables.csv: lmerTest 3.1-3 with Kenward-Roger df (pbkrtest) on the oats without one sub-plot.</summary>
    [Theory]
    [InlineData("V", "variety")]
    [InlineData("N", "nitrogen")]
    [InlineData("V:N", "variety:nitrogen")]
    public void Tests_WhenASubplotIsMissing_AgreeWithPublishedKenwardRoger(string label, string term)
    {
        var expected = CheckData.AnovaRows("yates_oats_missing(III,Victory,0.4cwt)", "lmer").Single(row => row.Text("term") == label);

        var row = Oats(true).Tests(DegreesOfFreedom.KenwardRoger).Find(term);

        CheckData.Near(expected.Number("F"), row.F, Reml);
        CheckData.Near(double.Parse(expected.Text("note").Split(' ')[2], CultureInfo.InvariantCulture), row.DenominatorDf, Reml);
        CheckData.Near(expected.Number("p"), row.P, 1e-4); // p moves by more than F and df do: 1e-5 in F is 3e-5 in a p of 1e-12
        Assert.Equal(expected.Count("df"), row.Df);
    }

    /// <summary>G_means.csv: emmeans 1.8.4 on the same fit.</summary>
    [Fact]
    public void Means_WhenASubplotIsMissing_AgreeWithPublishedAdjustedMeans()
    {
        var means = Oats(true).Means(DegreesOfFreedom.KenwardRoger, "variety", "nitrogen");
        var expected = ReferenceTable.Load("G_means.csv").Rows.Where(row => row.Text("dataset").StartsWith("yates_oats_missing", StringComparison.Ordinal)).ToArray();

        Assert.Equal(12, expected.Length);
        foreach (var row in expected)
        {
            CheckData.Near(row.Number("mean"), means.Find(row.Text("level")).Value, Reml);
        }

        Assert.True(means.Difference("Victory:0.4cwt", "Victory:0.0cwt").StandardError > means.Difference("Victory:0.6cwt", "Victory:0.0cwt").StandardError);
    }

    /// <summary>G_missing_plots.csv, last row: random blocks, Kenward-Roger (F, den df and p).</summary>
    [Fact]
    public void Tests_WhenABlockLostAPlot_AgreeWithPublishedKenwardRoger()
    {
        var expected = ReferenceTable.Load("G_missing_plots.csv").Find("quantity", "mixed model (random block) F, Kenward-Roger");
        var note = expected.Text("note").Split(' ');

        var row = MixedModel.Fit(CheckData.Gomez(withoutOne: true), [Term.Of("rate")], [Term.Of("rep")]).Tests(DegreesOfFreedom.KenwardRoger).Find("rate");

        CheckData.Near(expected.Number("value"), row.F, Reml);
        CheckData.Near(double.Parse(note[2], CultureInfo.InvariantCulture), row.DenominatorDf, Reml);
        CheckData.Near(double.Parse(note[4], CultureInfo.InvariantCulture), row.P, Reml);
    }

    private static MixedFit Orthodont(string structure)
    {
        var data = CheckData.Load("orthodont_repeated", "distance", "subject", "sex", "age");
        var ages = ReferenceTable.Load("G_data_orthodont_repeated.csv").Rows.Select(row => row.Number("age")).ToArray();
        return structure.StartsWith("random", StringComparison.Ordinal)
            ? MixedModel.Fit(data, Term.Factorial("sex", "age"), [Term.Of("subject")])
            : MixedModel.Fit(data, Term.Factorial("sex", "age"), [], new RepeatedPulls(Term.Of("subject"), ages, structure[0] switch
            {
                'A' => CovarianceStructure.Exponential,
                'c' => CovarianceStructure.CompoundSymmetry,
                _ => CovarianceStructure.Unstructured,
            }));
    }

    private static double[] Published(string structure, MixedFit fit) => structure[0] switch
    {
        'r' => [Math.Sqrt(fit.CovarianceParameter("variance of subject")), Math.Sqrt(fit.CovarianceParameter("residual variance"))],
        'A' => [fit.CovarianceParameter("correlation at the shortest interval"), Math.Sqrt(fit.CovarianceParameter("residual variance"))],
        'c' => [
            fit.CovarianceParameter("variance of plot") / (fit.CovarianceParameter("variance of plot") + fit.CovarianceParameter("residual variance")),
            Math.Sqrt(fit.CovarianceParameter("variance of plot") + fit.CovarianceParameter("residual variance"))],
        _ => [],
    };
}
