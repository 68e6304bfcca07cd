using System.Text.Json.Nodes;
using LabPipeline.Intake.Reading;

namespace LabPipeline.Intake.Tests.Reading;

/// <summary>Every fault of a row or a header, with its full sentence.</summary>
public sealed class FaultTests
{
    private const string Good = "S26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,0.1";

    [Theory]
    [InlineData("S26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,\"0,052\"", "line 2, column 7 'Glucose': found '0,052'; expected a number with decimal point; check the decimal setting of the instrument or its profile.")]
    [InlineData("S26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,1E5", "line 2, column 7 'Glucose': found '1E5'; expected a number without exponent; check the decimal setting of the instrument or its profile.")]
    [InlineData("S26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,0.1234567890123456", "line 2, column 7 'Glucose': found '0.1234567890123456'; expected at most 15 significant digits; check the export settings of the instrument or its profile.")]
    [InlineData("S26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,0.0000000000001", "line 2, column 7 'Glucose': found '0.0000000000001'; expected at most 12 decimals; check the export settings of the instrument or its profile.")]
    [InlineData("S26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,10.01", "line 2, column 7 'Glucose': found '10.01'; expected -1 to 10 g/L; measure again, or check the unit set at the instrument.")]
    [InlineData("S26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,<0", "line 2, column 7 'Glucose': found '<0'; expected a limit above 0; measure or enter it again.")]
    [InlineData("S26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,<ND", "line 2, column 7 'Glucose': found '<ND'; expected a number with decimal point; check the decimal setting of the instrument or its profile.")]
    [InlineData("S26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,-1.5", "line 2, column 7 'Glucose': found '-1.5'; expected a measured value; measure again: the instrument writes this when it has no value.")]
    [InlineData("S26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,-1.50", "line 2, column 7 'Glucose': found '-1.50'; expected a measured value; measure again: the instrument writes this when it has no value.")]
    [InlineData("S26P01T03R2C,1,1,R,AB,2026-02-30 08:30:00,0.1", "line 2, column 6 'Time': found '2026-02-30 08:30:00'; expected a day and time that exist, in the years 1900 to 2199; check the clock and date format of the instrument or its profile.")]
    [InlineData("S26P01T03R2C,1,1,R,AB,14.01.2026 08:30,0.1", "line 2, column 6 'Time': found '14.01.2026 08:30'; expected a time written yyyy-MM-dd HH:mm:ss; check the clock and date format of the instrument or its profile.")]
    [InlineData("S26P01T03R2C,1,1,R,AB,2026-03-08 02:30:00,0.1", "line 2, column 6 'Time': found '2026-03-08 02:30:00'; expected a time that exists in America/Chicago: clocks were put forward over it; check the clock and date format of the instrument or its profile.")]
    [InlineData("S26P01T03R2C,1,1,R,AB,2026-11-01 01:30:00,0.1", "line 2, column 6 'Time': found '2026-11-01 01:30:00'; expected a time that happened once in America/Chicago: clocks were put back over it; declare earlier or later in the profile, or export with offset.")]
    [InlineData("S26P01T03R2C,1,1,R,AB,,0.1", "line 2, column 6 'Time': found nothing; expected a text; complete the row at the instrument and export it again.")]
    [InlineData("S26P01T03R2X,1,1,R,AB,2026-01-14 08:30:00,0.1", "line 2, column 1 'Sample': found 'S26P01T03R2X'; expected a sample barcode whose last character belongs to the rest; scan the label again.")]
    [InlineData("s26p01t03r2x,1,1,R,AB,2026-01-14 08:30:00,0.1", "line 2, column 1 'Sample': found 's26p01t03r2x'; expected a sample barcode whose last character belongs to the rest; scan the label again.")]
    [InlineData("S26P01TO3R2C,1,1,R,AB,2026-01-14 08:30:00,0.1", "line 2, column 1 'Sample': found 'S26P01TO3R2C'; expected a sample barcode of 4 to 24 letters and digits without I, O and Q; scan the label again.")]
    [InlineData("3-1,1,1,R,AB,2026-01-14 08:30:00,0.1", "line 2, column 1 'Sample': found '3-1'; expected a sample barcode of 4 to 24 letters and digits without I, O and Q; scan the label again.")]
    [InlineData(",1,1,R,AB,2026-01-14 08:30:00,0.1", "line 2, column 1 'Sample': found nothing; expected a text; complete the row at the instrument and export it again.")]
    [InlineData("S26P01T03R2C,1,1,,AB,2026-01-14 08:30:00,0.1", "line 2, column 4 'Run': found nothing; expected a text; complete the row at the instrument and export it again.")]
    [InlineData("S26P01T03R2C,,1,R,AB,2026-01-14 08:30:00,0.1", "line 2, column 2 'Extract': found nothing; expected a text; complete the row at the instrument and export it again.")]
    [InlineData("S26P01T03R2C,1,1.0,R,AB,2026-01-14 08:30:00,0.1", "line 2, column 3 'Replicate': found '1.0'; expected a whole number from 0 to 9999; check the export settings of the instrument or its profile.")]
    [InlineData("S26P01T03R2C,1,10000,R,AB,2026-01-14 08:30:00,0.1", "line 2, column 3 'Replicate': found '10000'; expected a whole number from 0 to 9999; check the export settings of the instrument or its profile.")]
    [InlineData("S26P01T03R2C,1,99999999999999999999,R,AB,2026-01-14 08:30:00,0.1", "line 2, column 3 'Replicate': found '99999999999999999999'; expected a whole number from 0 to 9999; check the export settings of the instrument or its profile.")]
    [InlineData("S26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00", "line 2: found 6 cells; expected 7; export the file again.")]
    [InlineData("S26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,0,1", "line 2: found 8 cells; expected 7; export the file again.")]
    [InlineData(",,,,,,,", "line 2: found 8 cells; expected 7; export the file again.")]
    [InlineData("S26P01T03R2C,1,1,R,\"AB\"x,2026-01-14 08:30:00,0.1", "line 2: found 'S26P01T03R2C,1,1,R,\"AB\"x,2026-01-14 08:30:00,0.1\\n'; expected quotes only around whole cells; check the export settings of the instrument or its profile.")]
    [InlineData("S26P01T03R2C,1,1,R,A\"B,2026-01-14 08:30:00,0.1", "line 2: found 'S26P01T03R2C,1,1,R,A\"B,2026-01-14 08:30:00,0.1\\n'; expected quotes only around whole cells; check the export settings of the instrument or its profile.")]
    [InlineData("S26P01T03R2C,1,1,R,\"AB,2026-01-14 08:30:00,0.1", "line 2: found 'S26P01T03R2C,1,1,R,\"AB,2026-01-14 08:30:00,0.1\\n'; expected a closing quote; export the file again.")]
    public void Read_WhenSugarRowIsBad_SaysWhatWhereAndWhatToDo(string row, string expected) =>
        Assert.Equal(["f.csv " + expected], SampleFiles.Faults(SampleProfiles.Sugar(), $"{SampleFiles.SugarHeader}\n{row}\n"));

    [Theory]
    [InlineData("Sample,Extract,Replicate,Run,Operator,Time", "line 1: found no such column; expected column 'Glucose'; check that this is the profile of this instrument.")]
    [InlineData("Sample,Extract,Replicate,Run,Operator,Time,glucose,Glucose", "line 1, column 7 'glucose': found 'glucose'; expected only columns the profile names; name it in the profile or list it under ignoredColumns.")]
    [InlineData("Sample,Extract,Replicate,Run,Operator,Time,Glucose,Glucose", "line 1, column 8 'Glucose': found 'Glucose'; expected every column name once; check the export settings of the instrument or its profile.")]
    [InlineData("Sample,Extract,Replicate,Run,Operator,Time,Glucose,", "line 1, column 8 '': found nothing; expected only columns the profile names; name it in the profile or list it under ignoredColumns.")]
    public void Read_WhenHeaderDoesNotFit_SaysWhich(string header, string expected) =>
        Assert.Equal(["f.csv " + expected], SampleFiles.Faults(SampleProfiles.Sugar(), header + "\n" + Good + "\n"));

    [Theory]
    [InlineData("Sample = S26P01T03R2C\nRun = 7\nAir = 0 g\nWater = 284.5 g\n---\n", "line 3, 'Air': found '0 g'; expected weight in air above 0; measure or enter it again.")]
    [InlineData("Sample = S26P01T03R2C\nRun = 7\nAir = 3571.2 g\nWater = -284.5 g\n---\n", "line 4, 'Water': found '-284.5 g'; expected weight in water above 0; measure or enter it again.")]
    [InlineData("Sample = S26P01T03R2C\nRun = 7\nAir = 3571.2 gr\nWater = 284.5 g\n---\n", "line 3, 'Air': found 'gr'; expected a unit of weight_in_air such as g; check the unit set at the instrument.")]
    [InlineData("Sample = S26P01T03R2C\nRun = 7\nAir = 3571.2\nWater = 284.5 g\n---\n", "line 3, 'Air': found nothing; expected a unit of weight_in_air such as g; check the unit set at the instrument.")]
    [InlineData("Sample = S26P01T03R2C\nRun = 7\nAir = 3571.2 mL\nWater = 284.5 g\n---\n", "line 3, 'Air': found 'mL'; expected a unit of weight_in_air such as g; check the unit set at the instrument.")]
    [InlineData("Sample = S26P01T03R2C\nRun = 7\nAir = 3571.2 g\n---\n", "line 1, 'Water': found nothing; expected a text; complete the row at the instrument and export it again.")]
    [InlineData("Sample = S26P01T03R2C\nRun = 7\nAir = 1.1 g\nAir = 3571.2 g\nWater = 284.5 g\n---\n", "line 4, 'Air': found 'Air'; expected every key once in a block; export the file again.")]
    [InlineData("Sample = S26P01T03R2C\nRun = 7\nAir = 3571.2 g\nWater = 284.5 g\nTara = 1 g\n---\n", "line 5, 'Tara': found 'Tara'; expected only columns the profile names; name it in the profile or list it under ignoredColumns.")]
    [InlineData("Sample = S26P01T03R2C\nRun 7\nAir = 3571.2 g\nWater = 284.5 g\n---\n", "line 2: found 'Run 7'; expected a key, '=' and a value; check the export settings of the instrument or its profile.")]
    public void Read_WhenBlockIsBad_NamesTheLineOfTheKey(string text, string expected) =>
        Assert.Equal(["f.csv " + expected], SampleFiles.Faults(SampleProfiles.Balance(), text));

    [Theory]
    [InlineData("1 S26P01T03R2C 30.1", "1 S26P01T03R2C", "line 13: found 7 cells; expected 8; export the file again.")]
    [InlineData("NUMBER_OF_FIELDS 8", "NUMBER_OF_FIELDS 9", "line 7: found 8 fields; expected the 9 declared; export the file again.")]
    [InlineData("NUMBER_OF_SETS 2", "NUMBER_OF_SETS 3", "line 15: found 2 data sets; expected the 3 declared; export the file again.")]
    [InlineData("NUMBER_OF_SETS 2", "NUMBER_OF_SETS two", "line 11: found 'NUMBER_OF_SETS two'; expected a keyword and a whole number; check the export settings of the instrument or its profile.")]
    [InlineData("ORIGINATOR \"bench\"", "ORIGINATOR \"bench", "line 2: found 'ORIGINATOR \"bench'; expected a closing quote; export the file again.")]
    [InlineData("ORIGINATOR \"bench\"", "ORIGINATOR a b", "line 2: found 'ORIGINATOR a b'; expected a keyword and its value; check the export settings of the instrument or its profile.")]
    [InlineData("SERIAL", "SERIES", "line 7: found no such column; expected column 'SERIAL'; check that this is the profile of this instrument.")]
    [InlineData("LAB_L", "LAB_X", "line 7: found no such column; expected column 'LAB_L'; check that this is the profile of this instrument.|line 7, column 6 'LAB_X': found 'LAB_X'; expected only columns the profile names; name it in the profile or list it under ignoredColumns.")]
    [InlineData("END_DATA\n", "END_DATA\nBEGIN_DATA\n", "line 16: found 'BEGIN_DATA'; expected nothing after the last line; export the file again.")]
    [InlineData("BEGIN_DATA\n", "BEGIN_DATA\nBEGIN_DATA\n", "line 13: found 1 cells; expected 8; export the file again.|line 16: found 3 data sets; expected the 2 declared; export the file again.")]
    public void Read_WhenColourTextIsBad_SaysWhat(string part, string replacement, string expected)
    {
        var at = SampleFiles.Colour.IndexOf(part, StringComparison.Ordinal);
        at = part == "END_DATA\n" ? SampleFiles.Colour.LastIndexOf(part, StringComparison.Ordinal) : at;
        var text = SampleFiles.Colour.Remove(at, part.Length).Insert(at, replacement);

        Assert.Equal(expected.Split('|').Select(sentence => "f.csv " + sentence), SampleFiles.Faults(SampleProfiles.Colour(), text));
    }

    [Theory]
    [InlineData("S26P01T03R2C  17   4,53\n", "line 2: found 23 characters; expected 24; export the file again.")]
    [InlineData("S26P01T03R2C  17   4,530 9\n", "line 2: found '9'; expected blanks outside the fields; check that this is the profile of this instrument.")]
    [InlineData("S26P01T03R2Cx 17   4,530\n", "line 2: found 'x 17   4,530'; expected blanks outside the fields; check that this is the profile of this instrument.")]
    public void Read_WhenFixedWidthLineIsOff_SaysWhere(string line, string expected) =>
        Assert.Equal(["f.csv " + expected], SampleFiles.Faults(SampleProfiles.FixedWidth(), $"Peel weights\n{line}Records: 1\n"));

    [Theory]
    [InlineData("S26P01T03R2C;9;GLC;9,2;mg/dL\n", "line 1, column 3 'Test': found 'GLC'; expected a name in the profile's map; add it to the map or to its ignored names.")]
    [InlineData("S26P01T03R2C;9;GLU;9.2;mg/dL\n", "line 1, column 4 'Result': found '9.2'; expected groups of three digits; check the decimal setting of the instrument or its profile.")]
    [InlineData("S26P01T03R2C;9;GLU;9,2;g\n", "line 1, column 5 'Unit': found 'g'; expected a unit of glucose_in_extract such as g/L; check the unit set at the instrument.")]
    [InlineData("S26P01T03R2C;9;MASS;0;g\n", "line 1, column 4 'Result': found '0'; expected extract fresh mass above 0; measure or enter it again.")]
    [InlineData("S26P01T03R2C;9;GLU;;mg/dL\n", "line 1, column 4 'Result': found nothing; expected a text; complete the row at the instrument and export it again.")]
    public void Read_WhenOneValueRowIsBad_SaysWhat(string row, string expected) =>
        Assert.Equal(["f.csv " + expected], SampleFiles.Faults(SampleProfiles.OneValue(), row));

    [Fact]
    public void Read_WhenMissingIsNotAllowed_RefusesTheText()
    {
        var profile = SampleProfiles.Sugar(json => json["quantities"]![0]!["missing"] = "refuse");

        Assert.Equal(
            ["f.csv line 2, column 7 'Glucose': found 'ND'; expected a value in every row; measure again, or allow missing values in the profile."],
            SampleFiles.Faults(profile, $"{SampleFiles.SugarHeader}\nS26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,ND\n"));
    }

    [Fact]
    public void Read_WhenConvertedValueIsTooLarge_Refuses() => Assert.Equal(
        ["f.csv line 3, 'Air': found '999999999999999 kg'; expected a number below 10^15; check the export settings of the instrument or its profile."],
        SampleFiles.Faults(SampleProfiles.Balance(), "Sample = S26P01T03R2C\nRun = 7\nAir = 999999999999999 kg\nWater = 284.5 g\n---\n"));

    [Theory]
    [InlineData("min", "4.99", "5", "at least 5 g/L")]
    [InlineData("max", "5.01", "5", "at most 5 g/L")]
    public void Read_WhenOnlyOneLimitIsDeclared_IncludesItAndNamesIt(string limit, string outside, string at, string expected)
    {
        var profile = SampleProfiles.Sugar(json =>
        {
            var quantity = json["quantities"]![0]!.AsObject();
            quantity.Remove("min");
            quantity.Remove("max");
            quantity[limit] = 5;
        });
        string[] Faults(string value) => SampleFiles.Faults(profile, $"{SampleFiles.SugarHeader}\nS26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,{value}\n");

        Assert.Empty(Faults(at));
        Assert.Contains($"expected {expected};", Assert.Single(Faults(outside)), StringComparison.Ordinal);
    }

    [Fact]
    public void Describe_WhenFileTextIsHostile_ShowsNoControlsAndAtMostSixtyCharacters()
    {
        var name = "x\r\nINFO.csv";
        var fault = Assert.Single(SampleFiles.Read(
            SampleProfiles.Sugar(), $"{SampleFiles.SugarHeader}\nS26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,\"1\u001b[31m\n{new string('9', 500)}\"\n").Outcome.Faults);

        var sentence = fault.Describe(name);

        Assert.DoesNotContain(sentence, char.IsControl);
        Assert.StartsWith("x\\r\\nINFO.csv line 2, column 7 'Glucose': found '1\\u001B[31m\\n999", sentence, StringComparison.Ordinal);
        Assert.True(fault.Found.Length < 80);
    }

    [Theory]
    [InlineData("Run", 3, 128)]
    [InlineData("Operator", 4, 128)]
    [InlineData("Extract", 1, 32)]
    public void Read_WhenATextIsLongerThanTheWarehouseKeeps_Refuses(string column, int index, int longest)
    {
        string[] Faults(int length)
        {
            var cells = Good.Split(',');
            cells[index] = new string('x', length);
            return SampleFiles.Faults(SampleProfiles.Sugar(), $"{SampleFiles.SugarHeader}\n{string.Join(',', cells)}\n");
        }

        Assert.Empty(Faults(longest));
        Assert.Equal(
            [$"f.csv line 2, column {index + 1} '{column}': found {longest + 1} characters; expected at most {longest}; check that this is the profile of this instrument."],
            Faults(longest + 1));
    }

    [Fact]
    public void Read_WhenTheRowKeyIsLongerThanTheWarehouseKeeps_Refuses()
    {
        var profile = SampleProfiles.Sugar(json => json["rowKey"] = new JsonArray("Operator", "Run"));

        Assert.Equal(
            ["f.csv line 2: found a row key of 203 characters; expected at most 200; name fewer or shorter columns as the row key."],
            SampleFiles.Faults(profile, $"{SampleFiles.SugarHeader}\nS26P01T03R2C,1,1,{new string('r', 102)},{new string('o', 100)},2026-01-14 08:30:00,0.1\n"));
    }

    [Fact]
    public void FaultCodes_AreStableAndUnique()
    {
        var codes = typeof(FaultCode).GetFields().Select(field => (string)field.GetRawConstantValue()!).ToList();

        Assert.Equal(codes.Count, codes.Distinct().Count());
        Assert.All(codes, code => Assert.Matches("^intake\\.[a-z-]+$", code));
    }

    [Fact]
    public void Read_WhenColumnsArePositions_RefusesAWrongCount() => Assert.Equal(
        ["f.csv line 1: found 4 cells; expected 5; export the file again."],
        SampleFiles.Faults(SampleProfiles.OneValue(), "S26P01T03R2C;9;GLU;9,2\n"));

    [Fact]
    public void Read_WhenControlHasNoName_Refuses()
    {
        var profile = SampleProfiles.Sugar(json =>
        {
            json["controls"]![0]!["when"] = new JsonObject { ["column"] = "Run", ["equals"] = "QC" };
        });

        Assert.Equal(
            ["f.csv line 2, column 1 'Sample': found nothing; expected a text; complete the row at the instrument and export it again."],
            SampleFiles.Faults(profile, $"{SampleFiles.SugarHeader}\n,,,QC,AB,2026-01-14 08:30:00,0.1\n"));
    }
}
