using System.Globalization;
using LabPipeline.Reporting.Exports;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse;

namespace LabPipeline.Reporting.Tests.Exports;

/// <summary>Four plots and two pulls, so eight samples, on a real warehouse; what is written is read back by another library.</summary>
public abstract class ExportStoreSuite(DialectName store) : IAsyncLifetime
{
    private ExportLab _lab = null!;

    public async ValueTask InitializeAsync() => _lab = await ExportLab.CreateAsync(store);

    public async ValueTask DisposeAsync()
    {
        await _lab.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Theory]
    [InlineData(ExportKind.PlotMeans, "v_plot_pull")]
    [InlineData(ExportKind.SampleResults, "v_sample_result")]
    [InlineData(ExportKind.Readings, "v_reading")]
    public async Task Export_OfAnyKind_HasTheColumnsOfItsView(ExportKind kind, string view)
    {
        var header = (await _lab.ExportAsync(kind)).Split('\n')[0];

        Assert.Equal(await _lab.ColumnsOfAsync(view), header.Split(','));
    }

    [Fact]
    public async Task PlotMeans_OfATrial_AreOneRowAPlotAndPullInThatOrder()
    {
        var csv = await _lab.ExportAsync(ExportKind.PlotMeans);
        var rows = ExportLab.Parse(csv);

        Assert.Equal(
            ["1 101", "1 102", "1 201", "1 202", "3 101", "3 102", "3 201", "3 202"],
            rows.Select(row => $"{row["pull_no"]} {row["plot_code"]}"));
        Assert.Equal(("KT-101, early", "2026-10-05", ""), (rows[0]["clone"], rows[0]["pull_due_on"], rows[0]["glucose_mg_per_g"]));
        Assert.DoesNotContain('\r', csv);
        Assert.EndsWith("\n", csv, StringComparison.Ordinal);
    }

    [Fact]
    public async Task SampleResults_OfOnePull_HoldThatPullAndTheValueAsStored()
    {
        await _lab.StoreResultAsync(_lab.Barcode("102", 3), QuantityCatalogue.Glucose, 0.054032435632m);

        var rows = ExportLab.Parse(await _lab.ExportAsync(ExportKind.SampleResults, pull: 3));

        Assert.Equal(["101", "102", "201", "202"], rows.Select(row => row["plot_code"]));
        Assert.Equal(("0.054032435632", "0"), (rows[1]["glucose_mg_per_g"], rows[1]["glucose_below_limit"]));
        Assert.Equal(_lab.Barcode("102", 3), rows[1]["barcode"]);
    }

    [Fact]
    [Shows(74)]
    public async Task Readings_WhenTextLooksLikeAFormula_GuardItAndLeaveNumbersAlone()
    {
        await _lab.StoreReadingsAsync("=a,\"b\".csv", [ExportLab.Reading(_lab.Barcode("101", 1), "r1", -0.052m, "-0.052", "@line 1\nline 2")]);

        var row = Assert.Single(ExportLab.Parse(await _lab.ExportAsync(ExportKind.Readings)));

        Assert.Equal(("-0.052", "'-0.052"), (row["value"], row["raw_value"]));
        Assert.Equal("'@line 1\nline 2", row["operator"]);
        Assert.Equal("'=a,\"b\".csv", row["file_name"]);
        Assert.Equal(("2026-10-06T15:30:00.000Z", "2026-10-06 10:30"), (row["measured_at_utc"], row["measured_as_written"]));
    }

    [Fact]
    public async Task Readings_WhenSomeDoNotCountOrBelongToNoPlan_AreThoseInEffectOnly()
    {
        var barcode = _lab.Barcode("101", 1);
        await _lab.StoreReadingsAsync("first.csv", [ExportLab.Reading(barcode, "r1", 1.5m), ExportLab.Reading("26XX00000X", "r2", 1.6m)]);
        await _lab.StoreReadingsAsync("edited.csv", [ExportLab.Reading(barcode, "r1", 1.7m)]);

        var row = Assert.Single(ExportLab.Parse(await _lab.ExportAsync(ExportKind.Readings)));

        Assert.Equal(("1.5", "in effect", "first.csv"), (row["value"], row["standing"], row["file_name"]));
    }

    [Fact]
    public async Task Readings_WhateverTheOrderTheyCameIn_AreInTheOrderOfThePlan()
    {
        string[] barcodes = [_lab.Barcode("101", 3), _lab.Barcode("202", 1), _lab.Barcode("101", 1)];
        await _lab.StoreReadingsAsync("mixed.csv", [.. barcodes.Select(barcode => ExportLab.Reading(barcode, "r2" + barcode, 1m)), ExportLab.Reading(barcodes[2], "r1", 2m)]);

        var rows = ExportLab.Parse(await _lab.ExportAsync(ExportKind.Readings));

        Assert.Equal(["1 101 1", "1 101 2", "1 202 1", "3 101 1"], rows.Select(row => $"{row["pull_no"]} {row["plot_code"]} {row["value"]}"));
    }

    /// <remarks>docs/decisions/0003: at most 15 significant digits and 12 decimals survive both databases exactly.</remarks>
    [Fact]
    public async Task Readings_WhenImportedAgain_AreTheNumbersThatWereStored()
    {
        decimal[] values = [0m, 0.1m, 250.00m, -1m, 0.000000000001m, 0.123456789012m, 999.999999999999m, 999999999999999m, 123456789.012345m, -0.300000000004m];
        var barcode = _lab.Barcode("101", 1);
        await _lab.StoreReadingsAsync("values.csv", values.Select((value, index) => ExportLab.Reading(barcode, $"r{index}", value)));

        var rows = ExportLab.Parse(await _lab.ExportAsync(ExportKind.Readings));

        Assert.Equal(values, rows.Select(row => decimal.Parse((string)row["value"], CultureInfo.InvariantCulture)));
    }

    [Fact]
    public async Task Readings_WhenThereAreManyOfThem_AreNotHeldInMemory()
    {
        const int Count = 50_000;
        // 50,000 rows of 27 cells held as objects would take more than 30 MB; the bound leaves room for other tests running beside this one.
        const long Most = 12 << 20;
        var barcode = _lab.Barcode("101", 1);
        await _lab.StoreReadingsAsync("many.csv", Enumerable.Range(0, Count).Select(index => ExportLab.Reading(barcode, $"r{index}", index)));
        await using var writer = new MemoryProbe(Count / 2);
        var before = GC.GetTotalMemory(forceFullCollection: true);

        var outcome = await _lab.ExportAsync(ExportKind.Readings, new ExportScope(ExportLab.TrialCode), writer);

        Assert.Equal(Count, outcome.Rows);
        Assert.InRange(writer.Held - before, long.MinValue, Most);
    }

    [Fact]
    public async Task Export_OfATrialThatIsNotThere_SaysWhichAreAndWritesNothing()
    {
        await using var text = new StringWriter(CultureInfo.InvariantCulture);

        var outcome = await _lab.ExportAsync(ExportKind.PlotMeans, new ExportScope("NT62"), text);

        Assert.Equal(
            new ExportOutcome(ExportState.TrialNotFound, 0, "Trial 'NT62' is not in the warehouse; it holds NT26. Check the code, or load the trial's plan."), outcome);
        Assert.Equal("", text.ToString());
    }

    [Fact]
    public async Task Export_OfAPullThatIsNotPlanned_SaysWhichAreAndWritesNothing()
    {
        await using var text = new StringWriter(CultureInfo.InvariantCulture);

        var outcome = await _lab.ExportAsync(ExportKind.Readings, new ExportScope(ExportLab.TrialCode, 2), text);

        Assert.Equal(new ExportOutcome(ExportState.PullNotFound, 0, "Trial NT26 has no pull 2; it has 1, 3. Name one of them, or none for all."), outcome);
        Assert.Equal("", text.ToString());
    }
}
