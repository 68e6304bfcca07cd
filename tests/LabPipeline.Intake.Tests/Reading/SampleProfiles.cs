using System.Text.Json.Nodes;
using LabPipeline.Intake.Profiles;

namespace LabPipeline.Intake.Tests.Reading;

/// <summary>Profiles of an invented laboratory, one for each layout; a test changes the member it is about.</summary>
internal static class SampleProfiles
{
    public const string SugarJson = """
        {
          "schema": 1, "name": "bench-sugars", "version": 3, "kind": "sugar",
          "instrument": { "constant": "SUG-1" },
          "method": { "name": "oxidase", "version": "2" },
          "files": { "match": ["*_sugars.csv"], "complete": "final-newline", "quietSeconds": 5 },
          "text": { "encoding": "utf-8", "layout": "delimited", "delimiter": ",", "quote": "\"", "decimalMark": "point", "headerLine": 1 },
          "time": { "columns": ["Time"], "formats": ["yyyy-MM-dd HH:mm:ss"], "zone": "America/Chicago" },
          "identity": {
            "barcode": { "column": "Sample" }, "run": { "column": "Run" }, "operator": { "column": "Operator" },
            "extract": { "column": "Extract" }, "replicate": { "column": "Replicate" }
          },
          "quantities": [
            { "quantity": "glucose_in_extract", "column": "Glucose", "unit": "g/L", "belowLimit": "<", "min": -1, "max": 10, "missing": "allow" }
          ],
          "missingTexts": ["", "ND"],
          "placeholders": [{ "text": "9999", "as": "missing" }, { "text": "-1.5", "as": "refuse" }],
          "controls": [{ "when": { "column": "Sample", "startsWith": "QC" }, "material": { "column": "Sample" } }]
        }
        """;

    public const string BalanceJson = """
        {
          "schema": 1, "name": "hall-balance", "version": 1, "kind": "balance",
          "instrument": { "constant": "BAL-2" },
          "method": { "name": "under-water weighing", "version": "1" },
          "files": { "match": ["balance*.txt"], "complete": "final-newline", "quietSeconds": 5 },
          "text": { "encoding": "iso-8859-1", "layout": "key-value-blocks", "decimalMark": "point", "keySeparator": "=", "blockSeparator": "---" },
          "identity": { "barcode": { "column": "Sample" }, "run": { "column": "Run" } },
          "quantities": [
            { "quantity": "weight_in_air", "column": "Air", "unitInCell": true },
            { "quantity": "weight_in_water", "column": "Water", "unitInCell": true }
          ]
        }
        """;

    public const string ColourJson = """
        {
          "schema": 1, "name": "chip-colour", "version": 1, "kind": "colour",
          "instrument": { "column": "SERIAL" },
          "method": { "name": "sphere", "version": "1", "facts": { "illuminant": "D65", "observer": "10 deg" } },
          "files": { "match": ["*.txt"], "complete": "trailer" },
          "text": { "encoding": "utf-8", "layout": "cgats", "decimalMark": "point" },
          "identity": { "barcode": { "column": "SAMPLE_NAME" }, "run": { "column": "CREATED" }, "slice": { "column": "SAMPLE_ID" } },
          "quantities": [
            { "quantity": "cielab_l", "column": "LAB_L", "unit": "1" },
            { "quantity": "cielab_a", "column": "LAB_A", "unit": "1" },
            { "quantity": "cielab_b", "column": "LAB_B", "unit": "1" }
          ],
          "ignoredColumns": ["XYZ_X", "XYZ_Y", "XYZ_Z"]
        }
        """;

    public const string FixedWidthJson = """
        {
          "schema": 1, "name": "old-balance", "version": 1, "kind": "balance",
          "instrument": { "constant": "BAL-1" },
          "method": { "name": "peel", "version": "1" },
          "files": { "match": ["*.dat"], "complete": "trailer", "trailer": "Records:" },
          "text": {
            "encoding": "windows-1252", "layout": "fixed-width", "decimalMark": "comma", "skipLines": 1,
            "fields": [
              { "name": "Sample", "start": 1, "length": 12 }, { "name": "Run", "start": 14, "length": 3 }, { "name": "Mass", "start": 17, "length": 8 }
            ]
          },
          "identity": { "barcode": { "column": "Sample" }, "run": { "column": "Run" } },
          "quantities": [{ "quantity": "mass_before_peel", "column": "Mass", "unit": "kg" }]
        }
        """;

    public const string OneValueJson = """
        {
          "schema": 1, "name": "analyser-list", "version": 1, "kind": "sugar",
          "instrument": { "constant": "SUG-2" },
          "method": { "name": "membrane", "version": "1" },
          "files": { "match": ["*.csv"], "complete": "renamed-in" },
          "text": { "encoding": "utf-8", "layout": "delimited", "delimiter": ";", "quote": "none", "decimalMark": "comma", "groupMark": "point", "columns": ["Sample", "Run", "Test", "Result", "Unit"] },
          "identity": { "barcode": { "column": "Sample" }, "run": { "column": "Run" } },
          "oneValueRows": {
            "quantityColumn": "Test", "valueColumn": "Result", "unitColumn": "Unit",
            "map": {
              "GLU": { "quantity": "glucose_in_extract" },
              "SUC": { "quantity": "sucrose_in_extract" },
              "MASS": { "quantity": "extract_fresh_mass", "unit": "g" }
            },
            "ignored": ["TEMP"]
          }
        }
        """;

    public static Profile Sugar(Action<JsonNode>? change = null) => Make(SugarJson, change);

    public static Profile Balance(Action<JsonNode>? change = null) => Make(BalanceJson, change);

    public static Profile Colour(Action<JsonNode>? change = null) => Make(ColourJson, change);

    public static Profile FixedWidth(Action<JsonNode>? change = null) => Make(FixedWidthJson, change);

    public static Profile OneValue(Action<JsonNode>? change = null) => Make(OneValueJson, change);

    public static string Change(string json, Action<JsonNode>? change)
    {
        var node = JsonNode.Parse(json)!;
        change?.Invoke(node);
        return node.ToJsonString();
    }

    private static Profile Make(string json, Action<JsonNode>? change)
    {
        var result = ProfileDocument.Parse(Change(json, change), "test.json");
        Assert.Empty(result.Describe());
        return result.Profile!;
    }
}
