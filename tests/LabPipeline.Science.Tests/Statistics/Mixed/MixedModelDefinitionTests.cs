using LabPipeline.Science.Statistics.Comparisons;
using LabPipeline.Science.Statistics.Designs;
using LabPipeline.Science.Statistics.Distributions;
using LabPipeline.Science.Statistics.LinearModels;
using LabPipeline.Science.Statistics.Mixed;
using LabPipeline.Science.Tests.Statistics.Designs;
using LabPipeline.Science.Tests.Statistics.LinearModels;

namespace LabPipeline.Science.Tests.Statistics.Mixed;

/// <summary>The fit against the definition of its likelihood, for models with a mean for every combination and for models with fewer effects.</summary>
public sealed class MixedModelDefinitionTests
{
    private const string Correlation = "correlation at the shortest interval";

    private static readonly Dictionary<string, double> Days = new() { ["harvest"] = 0, ["winter"] = 60, ["spring"] = 150 };

    /// <summary>Random blocks, plots measured at uneven intervals, three values lost.</summary>
    [Theory]
    [InlineData("everything", true)]
    [InlineData("additive", true)]
    [InlineData("everything", false)]
    [InlineData("additive", false)]
    public void Fit_WhenPullsAreUnevenAndIncomplete_IsTheTopOfTheDefinition(string model, bool withPlotVariance)
    {
        PlotMean[] rows = [.. TrialRows.Storage().Where((_, index) => index is not (4 or 17 or 40))];
        var terms = model == "everything" ? Term.Factorial("clone", "rate", "pull") : [Term.Of("clone"), Term.Of("rate"), Term.Of("pull")];
        var structure = withPlotVariance ? CovarianceStructure.PlotPlusExponential : CovarianceStructure.Exponential;
        var fit = MixedModel.Fit(Data(rows), terms, [Term.Of("block")], new RepeatedPulls(Term.Of("plot"), [.. rows.Select(row => Days[row.Pull!])], structure));
        var columns = model == "everything" ? Cells(rows) : Additive(rows);
        double[] found = [fit.CovarianceParameter("variance of block"), withPlotVariance ? fit.CovarianceParameter("variance of plot") : 0,
            fit.CovarianceParameter("residual variance"), fit.CovarianceParameter(Correlation)];

        var top = Likelihood(rows, columns, found);

        // Cell indicators and effects against a first level are one another's whole-number combinations: the same ln |X'V^-1X|.
        CheckData.Near(top, fit.LogLikelihood, 1e-9);
        foreach (var (index, moved) in Enumerable.Range(0, 4).SelectMany(index => Near(found[index]).Select(moved => (index, moved))))
        {
            double[] aside = [.. found.Select((value, place) => place == index ? moved : value)];

            // Without plot variance in the model that one is zero and may not move.
            Assert.True((index == 1 && !withPlotVariance) || Likelihood(rows, columns, aside) < top, $"{model}: {found[index]} of parameter {index} is beaten by {moved}");
        }
    }

    /// <summary>Random blocks and main plots, plots measured at uneven intervals, three values lost: standard errors and df as the definition has them.</summary>
    [Theory]
    [InlineData("everything", true)]
    [InlineData("everything", false)]
    [InlineData("additive", true)]
    [InlineData("additive", false)]
    public void Means_WhenPullsAreUnevenAndIncomplete_HaveTheErrorsAndDfOfTheDefinition(string model, bool withPlotVariance)
    {
        PlotMean[] rows = [.. TrialRows.Storage().Where((_, index) => index is not (4 or 17 or 40))];
        var terms = model == "everything" ? Term.Factorial("clone", "rate", "pull") : [Term.Of("clone"), Term.Of("rate"), Term.Of("pull")];
        var structure = withPlotVariance ? CovarianceStructure.PlotPlusExponential : CovarianceStructure.Exponential;
        var fit = MixedModel.Fit(Data(rows), terms, [Term.Of("block"), Term.Of("block", "clone")], new RepeatedPulls(Term.Of("plot"), [.. rows.Select(row => Days[row.Pull!])], structure));
        var columns = model == "everything" ? Cells(rows) : Additive(rows);
        double[] found = [fit.CovarianceParameter("variance of block"), fit.CovarianceParameter("variance of block:clone"), .. withPlotVariance ? [fit.CovarianceParameter("variance of plot")] : Array.Empty<double>(),
            fit.CovarianceParameter("residual variance"), fit.CovarianceParameter(Correlation)];

        foreach (var cell in fit.Means(DegreesOfFreedom.KenwardRoger, "rate").Cells)
        {
            var weights = model == "everything" ? CellWeights(rows, cell.Label) : AdditiveWeights(rows, cell.Label);

            var (error, df) = DenseInference.Of(parameters => Covariance(rows, parameters, withPlotVariance), found, columns, weights);

            // The dense way takes its slopes by differences, good to eight digits.
            CheckData.Near(error, cell.Estimate!.StandardError, 1e-6);
            CheckData.Near(df, cell.Estimate.Df, 1e-5);
        }
    }

    /// <summary>Balanced split-plot without interaction: REML gives the strata's F and df (theory of balanced designs).</summary>
    [Theory]
    [InlineData("variety")]
    [InlineData("nitrogen")]
    public void Tests_WhenTheModelIsAdditive_AgreeWithTheStrata(string term)
    {
        Term[] terms = [Term.Of("variety"), Term.Of("nitrogen")];
        Term[] units = [Term.Of("block"), Term.Of("block", "variety")];
        var strata = StratifiedAnova.Fit(CheckData.Oats(), terms, units).Table.Rows.Single(row => row.Term == term && row.F is not null);

        var row = MixedModel.Fit(CheckData.Oats(), terms, units).Tests(DegreesOfFreedom.KenwardRoger).Find(term);

        CheckData.Near(strata.F!.Value, row.F, 1e-5);
        CheckData.Near(strata.DenominatorDf!.Value, row.DenominatorDf, 1e-5);
    }

    /// <summary>Like pairs of a mixed model have df equal but for rounding, which must not pass for different error terms.</summary>
    [Fact]
    public void Dunnett_AfterAMixedModel_TakesTheDfAsOne()
    {
        var means = FieldTrialAnalysis.Analyse(TrialRows.StorageDesign(), TrialRows.Storage()).Repeated!.MeansOf("rate").ForComparison();

        var comparisons = AgainstControl.Dunnett(means, "low", 0.05, Sidedness.TwoSided).Comparisons;

        Assert.Equal(2, comparisons.Count);
        Assert.All(comparisons, pair => Assert.InRange(pair.P, 0, 1));
    }

    /// <summary>A variance at its bound of zero can only rise.</summary>
    private static double[] Near(double value) => value > 1e-9 ? [0.97 * value, 1.03 * value] : [0.01];

    private static double Likelihood(PlotMean[] rows, double[][] columns, double[] parameters)
    {
        var covariance = new double[rows.Length, rows.Length];
        for (var i = 0; i < rows.Length; i++)
        {
            for (var j = 0; j < rows.Length; j++)
            {
                var days = Math.Abs(Days[rows[i].Pull!] - Days[rows[j].Pull!]);
                covariance[i, j] = (rows[i].Block == rows[j].Block ? parameters[0] : 0)
                    + (rows[i].Plot == rows[j].Plot ? parameters[1] + (parameters[2] * Math.Pow(parameters[3], days / 60)) : 0);
            }
        }

        return DenseLikelihood.Of(covariance, columns, [.. rows.Select(row => row.Value)]);
    }

    private static double[,] Covariance(PlotMean[] rows, double[] parameters, bool withPlotVariance)
    {
        var covariance = new double[rows.Length, rows.Length];
        var (plot, residual, correlation) = withPlotVariance ? (parameters[2], parameters[3], parameters[4]) : (0, parameters[2], parameters[3]);
        for (var i = 0; i < rows.Length; i++)
        {
            for (var j = 0; j < rows.Length; j++)
            {
                var days = Math.Abs(Days[rows[i].Pull!] - Days[rows[j].Pull!]);
                covariance[i, j] = (rows[i].Block == rows[j].Block ? parameters[0] + (rows[i].Levels["clone"] == rows[j].Levels["clone"] ? parameters[1] : 0) : 0)
                    + (rows[i].Plot == rows[j].Plot ? plot + (residual * Math.Pow(correlation, days / 60)) : 0);
            }
        }

        return covariance;
    }

    private static double[] CellWeights(PlotMean[] rows, string rate)
    {
        var cells = rows.DistinctBy(Cell).ToList();
        return [.. cells.Select(cell => cell.Levels["rate"] == rate ? 1.0 / cells.Count(other => other.Levels["rate"] == rate) : 0)];
    }

    private static double[] AdditiveWeights(PlotMean[] rows, string rate)
    {
        IEnumerable<double> Equal(Func<PlotMean, string> level) => Enumerable.Repeat(1.0 / rows.Select(level).Distinct().Count(), rows.Select(level).Distinct().Count() - 1);
        return [1, .. Equal(row => row.Levels["clone"]), .. rows.Select(row => row.Levels["rate"]).Distinct().Skip(1).Select(one => one == rate ? 1.0 : 0), .. Equal(row => row.Pull!)];
    }

    private static ModelData Data(PlotMean[] rows) => new([.. rows.Select(row => row.Value)],
    [
        Factor.InOrderOfAppearance("block", [.. rows.Select(row => row.Block)]),
        Factor.InOrderOfAppearance("plot", [.. rows.Select(row => row.Plot)]),
        Factor.InOrderOfAppearance("clone", [.. rows.Select(row => row.Levels["clone"])]),
        Factor.InOrderOfAppearance("rate", [.. rows.Select(row => row.Levels["rate"])]),
        Factor.InOrderOfAppearance("pull", [.. rows.Select(row => row.Pull!)]),
    ]);

    private static double[][] Cells(PlotMean[] rows) =>
        [.. rows.Select(Cell).Distinct().Select(cell => rows.Select(row => Cell(row) == cell ? 1.0 : 0.0).ToArray())];

    private static string Cell(PlotMean row) => $"{row.Levels["clone"]}/{row.Levels["rate"]}/{row.Pull}";

    private static double[][] Additive(PlotMean[] rows) =>
    [
        [.. rows.Select(_ => 1.0)],
        .. Indicators(rows, row => row.Levels["clone"]),
        .. Indicators(rows, row => row.Levels["rate"]),
        .. Indicators(rows, row => row.Pull!),
    ];

    private static IEnumerable<double[]> Indicators(PlotMean[] rows, Func<PlotMean, string> level) =>
        rows.Select(level).Distinct().Skip(1).Select(one => rows.Select(row => level(row) == one ? 1.0 : 0.0).ToArray());
}
