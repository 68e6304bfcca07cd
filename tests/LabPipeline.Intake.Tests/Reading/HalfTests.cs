using System.Text.Json.Nodes;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Reading;

namespace LabPipeline.Intake.Tests.Reading;

/// <summary>Codes of halves in files; which half a file is measured on is the laboratory's own rule (no source). Check characters are those of H_iso7064_examples.csv.</summary>
public sealed class HalfTests
{
    private const string Barcode = "S26P01T03R2C";
    private const string Nothing = "";

    // A profile of one column of values, its kind and quantities, and the one code it refuses.
    public static TheoryData<string, string, string> Cases => new()
    {
        { "sugar", "glucose_in_extract g/L", "-F" },
        { "sugar", "extract_fresh_mass g,extract_volume mL", "-F" },
        { "colour", "hunter_l 1,hunter_a 1,hunter_b 1", "-S" },
        { "bench", "stem_end_defect 1,greening 1", "-S" },
        { "bench", "chart_score 1", "-S" },
        { "balance", "chip_mass g", "-S" },
        { "balance", "slice_mass g,chip_mass g", "-S" },
        { "balance", "weight_in_air g,weight_in_water g", Nothing },
        { "balance", "mass_before_peel g,mass_after_peel g", Nothing },
        { "balance", "mass_at_pull g,chip_mass g", Nothing },
        { "bench", "cleaned_surface %", Nothing },
        { "bench", "cleaned_surface %,stem_end_defect 1", Nothing },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Read_OfACodeWithAHalf_TakesItWhereTheHalfBelongs(string kind, string quantities, string refused)
    {
        var profile = ProfileOf(kind, quantities.Split(','));
        foreach (var ending in new[] { Nothing, "-S", "-F", "-s", "-f" })
        {
            var (outcome, readings) = SampleFiles.Read(profile, FileOf(quantities, Barcode + ending));
            if (refused.Length > 0 && ending.Equals(refused, StringComparison.OrdinalIgnoreCase))
            {
                Assert.Equal((ReadState.Refused, FaultCode.BarcodeHalf), (outcome.State, outcome.Faults[0].Code));
                Assert.Empty(readings);
            }
            else
            {
                Assert.Empty(outcome.Faults);
                Assert.All(readings, reading => Assert.Equal((Barcode, Barcode), (reading.Barcode, reading.RowKey.ToString().Split('|')[0])));
                Assert.NotEmpty(readings);
            }
        }
    }

    [Fact]
    public void Read_OfAFryCodeInASugarFile_SaysWhatWhereAndWhatToDo() => Assert.Equal(
        ["f.csv line 2, column 1 'Sample': found 'S26P01T03R2C-F'; expected a code with -S, of the half for sugar; "
            + "find out which half was measured: swapped halves must be measured again, a label on the wrong half only scanned again."],
        SampleFiles.Faults(SampleProfiles.Sugar(), $"{SampleFiles.SugarHeader}\n{Barcode}-F,1,1,R,AB,2026-01-14 08:30:00,0.1\n"));

    [Fact]
    public void Read_OfASugarCodeInAColourFile_SaysWhatIsExpected() => Assert.All(
        SampleFiles.Faults(SampleProfiles.Colour(), SampleFiles.Colour.Replace(Barcode, Barcode + "-S", StringComparison.Ordinal)),
        fault => Assert.Contains("found 'S26P01T03R2C-S'; expected a code with -F, of the half for frying;", fault, StringComparison.Ordinal));

    [Theory]
    [InlineData("S26P01T03R2X-S", FaultCode.BarcodeCheck)]
    [InlineData("S26P01T03R2X-F", FaultCode.BarcodeCheck)]
    [InlineData("S26P01T03R2C-X", FaultCode.BarcodeFormat)]
    public void Read_OfACodeThatIsNone_RefusesTheBarcodeFirst(string code, string expected) => Assert.Equal(
        [expected],
        SampleFiles.Read(SampleProfiles.Sugar(), $"{SampleFiles.SugarHeader}\n{code},1,1,R,AB,2026-01-14 08:30:00,0.1\n").Outcome.Faults.Select(fault => fault.Code));

    [Fact]
    public void Read_OfTheSameSampleWithAndWithoutAHalf_JudgesEachRow()
    {
        var rows = new[] { "", "-S", "-S", "", "-F", "-S" }.Select((ending, index) => $"{Barcode}{ending},1,{index},R,AB,2026-01-14 08:30:00,0.1\n");

        var faults = SampleFiles.Read(SampleProfiles.Sugar(), $"{SampleFiles.SugarHeader}\n{string.Concat(rows)}").Outcome.Faults;

        Assert.Equal([(6, FaultCode.BarcodeHalf)], faults.Select(fault => (fault.Line, fault.Code)));
    }

    [Fact]
    public void Read_OfOneValueRows_GoesByTheQuantitiesOfTheMap()
    {
        Assert.Empty(SampleFiles.Faults(SampleProfiles.OneValue(), $"{Barcode}-S;9;GLU;9,2;mg/dL\n"));
        Assert.Single(SampleFiles.Faults(SampleProfiles.OneValue(), $"{Barcode}-F;9;GLU;9,2;mg/dL\n"));
    }

    private static string FileOf(string quantities, string code)
    {
        var count = quantities.Split(',').Length;
        return $"Sample,Run{string.Concat(Enumerable.Range(0, count).Select(index => $",Q{index}"))}\n{code},R{string.Concat(Enumerable.Repeat(",1", count))}\n";
    }

    private static Profile ProfileOf(string kind, string[] quantities)
    {
        var json = JsonNode.Parse(SampleProfiles.SugarJson)!.AsObject();
        foreach (var member in new[] { "time", "missingTexts", "placeholders", "controls" })
        {
            json.Remove(member);
        }

        json["kind"] = kind;
        json["identity"] = JsonNode.Parse("""{ "barcode": { "column": "Sample" }, "run": { "column": "Run" } }""");
        json["quantities"] = new JsonArray([.. quantities.Select((text, index) => JsonNode.Parse(
            $$"""{ "quantity": "{{text.Split(' ')[0]}}", "column": "Q{{index}}", "unit": "{{text.Split(' ')[1]}}" }"""))]);
        var result = ProfileDocument.Parse(json.ToJsonString(), "test.json");
        Assert.Empty(result.Describe());
        return result.Profile!;
    }
}
