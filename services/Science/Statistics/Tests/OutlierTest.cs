using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Statistics.Tests;

/// <summary>Outlier test on the residuals of a fitted linear model.</summary>
public static class OutlierTest
{
    /// <summary>
    /// tᵢ = eᵢ √[(df - 1) / (SSE (1 - hᵢ) - eᵢ²)] on df - 1 degrees of freedom, Bonferroni over all n (Cook and Weisberg 1982).
    /// </summary>
    /// <param name="residuals">Raw residuals e of the fitted model, in the unit of the response.</param>
    /// <param name="leverages">Diagonal of the hat matrix, 0 to 1, in the same order.</param>
    /// <param name="errorDf">Residual degrees of freedom, at least 2.</param>
    /// <returns>One entry for each observation, largest |t| first.</returns>
    /// <exception cref="ArgumentException">Unequal counts, values that are not finite, a leverage or df outside its range.</exception>
    /// <exception cref="NotEstimableException">An observation alone fixes its fitted value, or the model fits all the others exactly.</exception>
    public static IReadOnlyList<ResidualOutlier> Evaluate(IReadOnlyList<double> residuals, IReadOnlyList<double> leverages, int errorDf)
    {
        Sample.Check(residuals, 3, "The residuals");
        Sample.Check(leverages, 3, "The leverages");
        if (residuals.Count != leverages.Count)
        {
            throw new ArgumentException(Sample.Text($"Found {residuals.Count} residuals and {leverages.Count} leverages; one leverage for each residual is expected."));
        }

        var wrong = leverages.FirstOrDefault(leverage => leverage is < 0 or > 1 + 1e-9);
        if (wrong != 0)
        {
            throw new ArgumentException(Sample.Text($"A leverage is {wrong}; 0 to 1 is expected."), nameof(leverages));
        }

        Require.AtLeast(errorDf, 2, "Residual degrees of freedom");
        var sum = residuals.Sum(residual => residual * residual);
        return [.. residuals.Select((residual, index) => One(index, residual, leverages[index])).OrderByDescending(one => Math.Abs(one.Studentised))];

        ResidualOutlier One(int index, double residual, double leverage)
        {
            var free = 1 - leverage;
            var rest = (sum * free) - (residual * residual);
            if (free < 1e-9 || !(rest > 1e-12 * sum * free))
            {
                throw new NotEstimableException(
                    Sample.Text($"The studentised residual of observation {index + 1}"),
                    free < 1e-9 ? "it alone fixes its fitted value" : "the model fits all other observations exactly");
            }

            var t = residual * Math.Sqrt((errorDf - 1) / rest);
            var p = StudentT.TwoSided(t, errorDf - 1);
            return new ResidualOutlier(index, t, p, Math.Min(1, residuals.Count * p));
        }
    }
}
