using System.Globalization;
using LabPipeline.Science.ControlCharts;
using LabPipeline.Science.Statistics;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.ControlCharts;

/// <summary>Charts against the NIST/SEMATECH e-Handbook 6.3.2 and 6.3.3 (F_ files) and constants computed by integration with another program.</summary>
public sealed class ControlChartTests
{
    [Fact]
    public void Constants_From2To25_AgreeToSixDecimals()
    {
        var rows = ReferenceTable.Load("F_control_chart_constants.csv").Rows;
        Assert.Equal(24, rows.Count);
        foreach (var row in rows)
        {
            var constants = ControlChartConstants.For(row.Count("n"));
            (string Column, double Value)[] found =
            [
                ("A2", constants.A2), ("A3", constants.A3), ("d2", constants.D2Mean), ("d3", constants.D3Deviation), ("c4", constants.C4),
                ("D3", constants.D3), ("D4", constants.D4), ("B3", constants.B3), ("B4", constants.B4), ("A", constants.A),
                ("B5", constants.B5), ("B6", constants.B6), ("D1", constants.D1), ("D2", constants.D2),
            ];
            Assert.All(found, pair => Assert.Equal(row.Number(pair.Column), pair.Value, 6e-7));
        }
    }

    [Fact]
    public void Individuals_OnTheFlowRates_AgreeWithTheHandbook()
    {
        var table = ReferenceTable.Load("F_individuals_flowrate.csv");
        var values = Decimals(table.Find("quantity", "data (NIST/SEMATECH e-Handbook 6.3.2.2)").Text("value"));

        var chart = IndividualsChart.From(values);

        Assert.Equal(Value(table, "mean"), chart.Values.Centre);
        Assert.Equal(Value(table, "mean moving range"), decimal.Round(chart.MovingRanges.Centre, 6));
        Assert.Equal(Value(table, "UCL with d2=1.128379"), decimal.Round(chart.Values.Upper, 6));
        // The handbook rounds d2 to 1.128 and 3.2665 to 3.267: 0.0017 in the limits, 0.0009 in the range limit.
        Assert.Equal((double)Value(table, "published UCL"), (double)chart.Values.Upper, 0.0018);
        Assert.Equal((double)Value(table, "published LCL"), (double)chart.Values.Lower, 0.0018);
        Assert.Equal((double)Value(table, "MR UCL 3.267*MRbar"), (double)chart.MovingRanges.Upper, 0.001);
        Assert.Equal(0m, chart.MovingRanges.Lower);
        Assert.DoesNotContain(values, chart.Values.IsOut);
    }

    [Fact]
    public void Individuals_OnDuplicateDifferences_GiveTheRangeChartOfPairs()
    {
        // E_pooled_duplicates.csv: range chart UCL = D4(2) x mean |d|; s_r from mean |d| / d2(2).
        var table = ReferenceTable.Load("E_pooled_duplicates.csv");
        var constants = ControlChartConstants.For(2);
        var mean = table.Find("quantity", "mean |d|").Number("value");

        Assert.Equal(table.Find("quantity", "s_r from mean |d| / 1.128379").Number("value"), mean / constants.D2Mean, 1e-9);
        // The table's factor is cut to 3.2665.
        Assert.Equal(table.Find("quantity", "range chart UCL = 3.2665 mean|d|").Number("value"), mean * constants.D4, 1e-7);
    }

    [Fact]
    public void Ewma_OnTheHandbookData_AgreesToSixDecimals()
    {
        var rows = ReferenceTable.Load("F_ewma_nist.csv").Rows.Where(row => row.Has("x")).ToList();

        var points = new EwmaChart(target: 50m, sigma: 2.0539m, lambda: 0.3m).Follow(rows.Select(row => row.Exact("x")));

        Assert.Equal(20, points.Count);
        Assert.All(rows.Zip(points), pair =>
        {
            Assert.Equal(pair.First.Exact("EWMA"), decimal.Round(pair.Second.Average, 6));
            Assert.Equal(pair.First.Exact("UCL_exact"), decimal.Round(pair.Second.Limits.Upper, 6));
            Assert.Equal(pair.First.Exact("LCL_exact"), decimal.Round(pair.Second.Limits.Lower, 6));
            Assert.False(pair.Second.IsOut);
        });
        // Published asymptotic limits: 52.5884 and 47.4115.
        Assert.Equal(52.5884m, decimal.Round(points[^1].Limits.Upper, 4));
    }

    [Fact]
    public void Cusum_OnTheHandbookData_SignalsFromGroup14()
    {
        var rows = ReferenceTable.Load("F_cusum_nist.csv").Rows;

        var points = new CusumChart(target: 325m, allowance: 0.3175m, decisionInterval: 4.1959m).Follow(rows.Select(row => row.Exact("x")));

        Assert.All(rows.Zip(points), pair =>
        {
            Assert.Equal(pair.First.Exact("S_hi"), pair.Second.High);
            Assert.Equal(pair.First.Exact("S_lo"), pair.Second.Low);
            Assert.Equal(pair.First.Text("signal_h_4.1959") == "OUT", pair.Second.IsOut);
        });
    }

    [Fact]
    public void AttributeCharts_OnTheHandbookData_FindTheSamePoints()
    {
        var table = ReferenceTable.Load("F_attribute_charts_nist.csv");
        var wafers = table.Find("chart", "c (defects per wafer)");
        var counts = Decimals(wafers.Text("data")).Select(value => (int)value).ToList();
        AssertLimits(wafers, AttributeChart.Counts(counts));
        Assert.Equal([24], OutOf(counts.Select(count => (decimal)count), Enumerable.Repeat(AttributeChart.Counts(counts), counts.Count)));
        // One unit each: the u chart is the c chart.
        Assert.All(AttributeChart.CountsPerUnit([.. counts.Select(count => (count, 1m))]), limits => Assert.Equal(AttributeChart.Counts(counts), limits));

        var shares = table.Find("chart", "p (n=50)");
        var fractions = Decimals(shares.Text("data"));
        var limits = AttributeChart.Shares([.. fractions.Select(share => ((int)(share * 50m), 50))]);
        AssertLimits(shares, limits[0]);
        Assert.Equal([15, 23], OutOf(fractions, limits));
    }

    [Fact]
    public void CountsPerUnit_WhenUnitsDiffer_WidensTheLimits()
    {
        // By hand: 12 defects in 6 units, u-bar 2; 4 units: 2 ± 3 sqrt(0.5) = 4.121320 and 0; 2 units: 2 ± 3 = 5 and 0.
        var limits = AttributeChart.CountsPerUnit([(8, 4m), (4, 2m)]);

        Assert.Equal([4.121320m, 5m], limits.Select(limit => decimal.Round(limit.Upper, 6)));
        Assert.All(limits, limit => Assert.Equal(0m, limit.Lower));
    }

    [Fact]
    public void Subgroups_OnASmallExample_UseTheTabledFactors()
    {
        // Subgroups of 3 with ranges 2 and 4 and means 2 and 5; A2(3) 1.023, D4(3) 2.575, A3(3) 1.954, B4(3) 2.568 of F_control_chart_constants.csv.
        IReadOnlyList<decimal>[] subgroups = [[1m, 2m, 3m], [3m, 5m, 7m]];
        var row = ReferenceTable.Load("F_control_chart_constants.csv").Find("n", "3");

        var ranges = SubgroupChart.FromRanges(subgroups);
        var deviations = SubgroupChart.FromDeviations(subgroups);

        Assert.Equal(3.5 + (row.Number("A2") * 3), (double)ranges.Means.Upper, 1e-5);
        Assert.Equal(row.Number("D4") * 3, (double)ranges.Spreads.Upper, 1e-5);
        Assert.Equal(3.5 + (row.Number("A3") * 1.5), (double)deviations.Means.Upper, 1e-5);
        Assert.Equal(row.Number("B4") * 1.5, (double)deviations.Spreads.Upper, 1e-5);
        Assert.Equal((0m, 0m), (ranges.Spreads.Lower, deviations.Spreads.Lower));
    }

    [Fact]
    public void Limits_OnTheLine_AreInside()
    {
        var limits = AttributeChart.Counts([16, 16]);

        Assert.False(limits.IsOut(28m));
        Assert.False(limits.IsOut(4m));
        Assert.True(limits.IsOut(28.000001m));
        Assert.Equal(3m, limits.Z(28m));
    }

    [Fact]
    public void Inputs_WhenOutOfRange_AreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ControlChartConstants.For(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ControlChartConstants.For(26));
        Assert.Throws<ArgumentException>(() => IndividualsChart.From([1m]));
        Assert.Throws<NotEstimableException>(() => IndividualsChart.From([1m, 1m, 1m]));
        Assert.Throws<ArgumentException>(() => SubgroupChart.FromRanges([[1m, 2m], [1m, 2m, 3m]]));
        Assert.Throws<NotEstimableException>(() => AttributeChart.Counts([0, 0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => AttributeChart.Shares([(3, 2), (1, 2)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new EwmaChart(50m, 1m, 1.1m));
        Assert.Throws<ArgumentOutOfRangeException>(() => new CusumChart(50m, -1m, 4m));
    }

    private static void AssertLimits(ReferenceRow row, ControlLimits limits)
    {
        Assert.Equal(row.Exact("center"), decimal.Round(limits.Centre, 6));
        Assert.Equal(row.Exact("UCL"), decimal.Round(limits.Upper, 6));
        Assert.Equal(row.Exact("LCL"), decimal.Round(limits.Lower, 6));
    }

    private static IEnumerable<int> OutOf(IEnumerable<decimal> values, IEnumerable<ControlLimits> limits) =>
        values.Zip(limits).Select((pair, index) => (pair, index)).Where(point => point.pair.Second.IsOut(point.pair.First)).Select(point => point.index + 1);

    private static List<decimal> Decimals(string text) => [.. text.Split(' ').Select(part => decimal.Parse(part, CultureInfo.InvariantCulture))];

    private static decimal Value(ReferenceTable table, string quantity) => table.Find("quantity", quantity).Exact("value");
}
