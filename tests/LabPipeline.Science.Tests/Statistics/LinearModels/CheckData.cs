using System.Globalization;
using LabPipeline.Science.Statistics.LinearModels;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.LinearModels;

/// <summary>The G_data_ sets as model data; sources are named in the reference readme (MASS, nlme, agridat, base R).</summary>
internal static class CheckData
{
    public static ModelData Load(string set, string response, params string[] factors) => Load(set, response, _ => true, factors);

    public static ModelData Load(string set, string response, Func<ReferenceRow, bool> keep, params string[] factors)
    {
        var rows = ReferenceTable.Load($"G_data_{set}.csv").Rows.Where(keep).ToArray();
        return new ModelData([.. rows.Select(row => row.Number(response))],
            [.. factors.Select(name => Factor.InOrderOfAppearance(name, [.. rows.Select(row => row.Text(name))]))]);
    }

    public static ModelData LoadRegression(string set, string response, string covariate)
    {
        var rows = ReferenceTable.Load($"G_data_{set}.csv").Rows;
        return new ModelData([.. rows.Select(row => row.Number(response))], [], [new Covariate(covariate, [.. rows.Select(row => row.Number(covariate))])]);
    }

    public static ModelData Oats(bool withoutOne = false) =>
        Load("yates_oats", "yield", row => !(withoutOne && IsMissingOat(row)), "block", "variety", "nitrogen");

    public static ModelData Gomez(bool withoutOne = false) =>
        Load("gomez_seedrate", "yield", row => !(withoutOne && row.Text("rate") == "100" && row.Text("rep") == "R2"), "rep", "rate");

    public static IReadOnlyList<ReferenceRow> AnovaRows(string set, string model, string? stratum = null) =>
        [.. ReferenceTable.Load("G_anova_tables.csv").Rows.Where(row => row.Text("dataset") == set
            && row.Text("model").StartsWith(model, StringComparison.Ordinal) && (stratum is null || row.Text("stratum") == stratum))];

    /// <summary>The tables carry 12 significant digits; sums of squares of exact data agree to the tolerance the readme asks for.</summary>
    public static void Near(double expected, double? actual, double relative = 1e-8)
    {
        Assert.NotNull(actual);
        Assert.True(Math.Abs(expected - actual.Value) <= relative * Math.Max(Math.Abs(expected), 1e-30),
            string.Create(CultureInfo.InvariantCulture, $"expected {expected:R}, found {actual.Value:R}"));
    }

    public static void SameLine(ReferenceRow expected, AnovaRow actual)
    {
        Assert.Equal(expected.Count("df"), actual.Df);
        Near(expected.Number("sum_sq"), actual.SumOfSquares);
        Near(expected.Number("mean_sq"), actual.MeanSquare);
        if (expected.Has("F"))
        {
            Near(expected.Number("F"), actual.F);
            Near(expected.Number("p"), actual.P, 1e-7);
        }
        else
        {
            Assert.Null(actual.F);
        }
    }

    private static bool IsMissingOat(ReferenceRow row) =>
        row.Text("block") == "III" && row.Text("variety") == "Victory" && row.Text("nitrogen") == "0.4cwt";
}
