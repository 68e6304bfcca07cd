using System.Globalization;
using System.IO.Compression;
using System.Text.Json.Serialization;
using System.Xml.Linq;
using LabPipeline.Reporting.Exports;
using LabPipeline.Science.Quantities;
using MiniExcelLibs;
using Parquet;
using Parquet.Serialization;

namespace LabPipeline.Reporting.Tests.Exports;

/// <summary>Parquet and workbooks, read back by readers that know nothing of ours.</summary>
public sealed class TypedFilesTests
{
    [Fact]
    public async Task Parquet_OfPlotMeans_ReadsBackWithTypesAndNothingForNothing()
    {
        await using var lab = await ExportLab.CreateAsync();
        await lab.StoreResultAsync(lab.Barcode("101", 1), QuantityCatalogue.Glucose, 0.052123456789m);

        using var file = await lab.ExportAsync(ExportKind.PlotMeans, ExportFormat.Parquet);

        await using (var reader = await ParquetReader.CreateAsync(file, leaveStreamOpen: true, cancellationToken: TestContext.Current.CancellationToken))
        {
            var fields = reader.Schema.GetDataFields().ToDictionary(field => field.Name);
            Assert.Equal((typeof(long), typeof(double), typeof(DateTime)), (fields["pull_no"].ClrType, fields["glucose_mg_per_g"].ClrType, fields["pull_due_on"].ClrType));
        }

        file.Position = 0;
        var rows = (await ParquetSerializer.DeserializeAsync<PlotRow>(file, cancellationToken: TestContext.Current.CancellationToken)).Data;
        Assert.Equal(8, rows.Count);
        Assert.Equal(0.052123456789, rows.Single(row => row is { PlotCode: "101", PullNo: 1 }).Glucose!.Value, 15);
        Assert.Equal(7, rows.Count(row => row.Glucose is null));
    }

    private sealed class PlotRow
    {
        [JsonPropertyName("plot_code")]
        public string? PlotCode { get; set; }

        [JsonPropertyName("pull_no")]
        public long? PullNo { get; set; }

        [JsonPropertyName("glucose_mg_per_g")]
        public double? Glucose { get; set; }
    }

    [Fact]
    public async Task Workbook_OfPlotMeans_HoldsTheTableAndItsDictionary()
    {
        await using var lab = await ExportLab.CreateAsync();
        await lab.StoreResultAsync(lab.Barcode("101", 1), QuantityCatalogue.Glucose, 0.052123456789m);

        using var file = await lab.ExportAsync(ExportKind.PlotMeans, ExportFormat.Workbook);

        Assert.Equal(["plot pull", "data dictionary"], file.GetSheetNames());
        var rows = file.Query(useHeaderRow: true, sheetName: "plot pull").Cast<IDictionary<string, object?>>().ToList();
        var row = rows.Single(one => (string?)one["plot_code"] == "101" && Convert.ToInt32(one["pull_no"], CultureInfo.InvariantCulture) == 1);
        Assert.Equal(0.052123456789, Assert.IsType<double>(row["glucose_mg_per_g"]), 15);
        var words = file.Query(useHeaderRow: true, sheetName: "data dictionary").Cast<IDictionary<string, object?>>().ToDictionary(one => (string)one["column"]!, one => (string?)one["meaning"]);
        Assert.Equal(rows[0].Keys, words.Keys);
        Assert.All(words.Values, Assert.NotEmpty!);
    }

    [Fact]
    [Shows(74)]
    public async Task Workbook_WithTextThatLooksLikeAFormula_KeepsItAsText()
    {
        await using var lab = await ExportLab.CreateAsync();
        await lab.StoreReadingsAsync("a.csv", [ExportLab.Reading(lab.Barcode("101", 1), "1", 0.05m, "=1+1", by: "1E5")]);

        using var file = await lab.ExportAsync(ExportKind.Readings, ExportFormat.Workbook);

        Assert.Equal(("=1+1", "1E5"), file.Query(useHeaderRow: true, sheetName: "reading").Cast<IDictionary<string, object?>>().Select(row => ((string)row["raw_value"]!, (string)row["operator"]!)).Single());
        file.Position = 0;
        using var zip = new ZipArchive(file, ZipArchiveMode.Read, leaveOpen: true);
        var sheets = zip.Entries.Where(entry => entry.FullName.StartsWith("xl/worksheets/", StringComparison.Ordinal)).Select(entry => XDocument.Load(entry.Open())).ToList();
        Assert.NotEmpty(sheets);
        Assert.DoesNotContain(sheets.SelectMany(sheet => sheet.Descendants()), element => element.Name.LocalName == "f");
    }

    [Fact]
    public async Task Parquet_OfReadingsOfAPullWithoutAny_HasColumnsAndNoRows()
    {
        await using var lab = await ExportLab.CreateAsync();

        using var file = await lab.ExportAsync(ExportKind.Readings, ExportFormat.Parquet);

        await using var reader = await ParquetReader.CreateAsync(file, cancellationToken: TestContext.Current.CancellationToken);
        Assert.Contains("file_line", reader.Schema.GetDataFields().Select(field => field.Name));
        Assert.Equal(0, reader.RowGroups.Sum(group => group.RowCount));
    }
}
