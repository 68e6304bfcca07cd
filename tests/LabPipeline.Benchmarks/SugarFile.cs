using System.Globalization;
using LabPipeline.Science.Barcodes;

namespace LabPipeline.Benchmarks;

/// <summary>Generates one large analyser export: 8 columns, unique by run and sequence number.</summary>
internal static class SugarFile
{
    public const string Header = "Sample,Run,Seq,Extract,Replicate,Glucose,Operator,Time";

    public const string Profile = """
        {
          "schema": 1, "name": "bulk-sugars", "version": 1, "kind": "sugar",
          "instrument": { "constant": "SUG-1" },
          "method": { "name": "oxidase", "version": "1" },
          "files": { "match": ["*.csv"], "complete": "renamed-in" },
          "text": { "encoding": "utf-8", "layout": "delimited", "delimiter": ",", "quote": "\"", "decimalMark": "point", "headerLine": 1 },
          "time": { "columns": ["Time"], "formats": ["yyyy-MM-dd HH:mm:ss"], "zone": "Etc/UTC" },
          "identity": {
            "barcode": { "column": "Sample" }, "run": { "column": "Run" }, "operator": { "column": "Operator" },
            "extract": { "column": "Extract" }, "replicate": { "column": "Replicate" }
          },
          "rowKey": ["Seq"],
          "quantities": [{ "quantity": "glucose_in_extract", "column": "Glucose", "unit": "g/L" }]
        }
        """;

    private const int RowsPerSample = 40;

    public static void Write(string path, int rows, int round, int firstSample = 0)
    {
        var start = new DateTime(2026, 1, 14, 8, 0, 0, DateTimeKind.Utc);
        var barcode = "";
        using var writer = new StreamWriter(path);
        writer.Write(Header + "\n");
        for (var row = 0; row < rows; row++)
        {
            if (row % RowsPerSample == 0)
            {
                barcode = BarcodeOf(firstSample + (row / RowsPerSample));
            }

            writer.Write(string.Create(
                CultureInfo.InvariantCulture,
                $"{barcode},R{round},{row},{(row % 2 == 0 ? 'A' : 'B')},{(row / 2 % 2) + 1},0.{(row * 7919L % 9973) + 10:D5},T{row % 4},{start.AddSeconds(row):yyyy-MM-dd HH:mm:ss}\n"));
        }
    }

    public static string BarcodeOf(int sample)
    {
        var payload = string.Create(CultureInfo.InvariantCulture, $"26XB{sample:D7}");
        return payload + Mod37x36.Compute(payload);
    }
}
