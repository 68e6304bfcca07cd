namespace LabPipeline.Intake.Tests.Storing;

/// <summary>One invented analyser, with each way of knowing that a file is complete.</summary>
internal static class SugarProfile
{
    public const string Header = "Sample,Run,Seq,Extract,Glucose\n";

    public static readonly string RenamedIn = With("""{ "match": ["*.csv"], "complete": "renamed-in" }""");

    public static readonly string FinalNewline = With("""{ "match": ["*.csv"], "complete": "final-newline", "quietSeconds": 5 }""");

    public static readonly string DoneFile = With("""{ "match": ["*.csv"], "complete": "done-file" }""");

    public static readonly string Trailer = With("""{ "match": ["*.csv"], "complete": "trailer", "trailer": "#end", "quietSeconds": 5 }""");

    /// <summary>Good rows: check characters are those of ISO/IEC 7064 MOD 37,36 (S26P01T03R2C and S26P01T03R3A are in H_iso7064_examples.csv).</summary>
    public static string Rows(params (string Barcode, int Sequence, string Glucose)[] rows) =>
        Header + string.Concat(rows.Select(row => $"{row.Barcode},R1,{row.Sequence},A,{row.Glucose}\n"));

    private static string With(string files) => $$"""
        {
          "schema": 1, "name": "bench-sugars", "version": 1, "kind": "sugar",
          "instrument": { "constant": "SUG-1" },
          "method": { "name": "oxidase", "version": "2" },
          "files": {{files}},
          "text": { "encoding": "utf-8", "layout": "delimited", "delimiter": ",", "quote": "\"", "decimalMark": "point", "headerLine": 1, "commentPrefix": "#" },
          "identity": { "barcode": { "column": "Sample" }, "run": { "column": "Run" }, "extract": { "column": "Extract" } },
          "rowKey": ["Seq"],
          "quantities": [{ "quantity": "glucose_in_extract", "column": "Glucose", "unit": "g/L" }]
        }
        """;
}
