using LabPipeline.Intake.Reading;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Intake.Tests.Reading;

/// <summary>What good files of every layout become.</summary>
public sealed class FileReaderTests
{
    [Fact]
    public void Read_WhenSugarFileIsGood_GivesEveryFieldOfAReading()
    {
        var (outcome, readings) = SampleFiles.Read(SampleProfiles.Sugar(), SampleFiles.Sugar);

        Assert.Equal(ReadState.Complete, outcome.State);
        Assert.Equal((5, 3, 1, 0), (outcome.Rows, outcome.Readings, outcome.ControlReadings, outcome.FryBatchReadings));
        Assert.Equal(
            new ParsedReading(
                ReadingSubject.Sample, 2, "SUG-1", "RUN-7", "S26P01T03R2C|1|1||", QuantityCatalogue.GlucoseInExtract, "S26P01T03R2C", null, 0.052m, false,
                "0.052", "g/L", "1", 1, null, null, "AB", new DateTimeOffset(2026, 1, 14, 14, 30, 0, TimeSpan.Zero), "2026-01-14 08:30:00"),
            readings[0]);
    }

    [Fact]
    public void Read_WhenRowIsAControl_NamesItsMaterialAndNeedsNoBarcode()
    {
        var control = SampleFiles.Read(SampleProfiles.Sugar(), SampleFiles.Sugar).Readings[2];

        Assert.Equal((ReadingSubject.Control, "QC-LOW", (string?)null, 0.101m), (control.Subject, control.Material, control.Barcode, control.Value));
        Assert.Equal("QC-LOW|||||2026-01-14 08:32:00", control.RowKey.Text);
    }

    [Fact]
    public void Read_WhenResultIsBelowTheLimit_KeepsTheLimitAsCensored()
    {
        var censored = SampleFiles.Read(SampleProfiles.Sugar(), SampleFiles.Sugar).Readings[3];

        Assert.Equal((true, 0.005m, "<0.005"), (censored.BelowLimit, censored.Value, censored.RawValue.Text));
        Assert.Equal("A \"B\", jr", censored.Operator);
    }

    [Fact]
    public void Read_WhenValueIsMissing_CountsItByItsText()
    {
        var rows = "S26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,\nS26P01T03R2C,1,2,R,AB,2026-01-14 08:30:00,9999\nS26P01T03R2C,1,3,R,AB,2026-01-14 08:30:00,9999.00\n";

        var (outcome, readings) = SampleFiles.Read(SampleProfiles.Sugar(), SampleFiles.Sugar + rows);

        Assert.Equal(4, readings.Count);
        Assert.Equal(new Dictionary<string, long> { [""] = 1, ["ND"] = 1, ["9999"] = 2 }, outcome.MissingValues);
    }

    [Fact]
    [Shows(24)]
    public void Read_WhenColumnsStandInAnotherOrder_FindsThemByName()
    {
        var text = "Glucose,Time,Operator,Run,Replicate,Extract,Sample\n0.052,2026-01-14 08:30:00,AB,RUN-7,1,1,S26P01T03R2C\n";

        var expected = SampleFiles.Read(SampleProfiles.Sugar(), SampleFiles.Sugar).Readings[0];

        Assert.Equal(expected, Assert.Single(SampleFiles.Read(SampleProfiles.Sugar(), text).Readings));
    }

    [Theory]
    [InlineData("\r\n")]
    [InlineData("\n\n")]
    [InlineData(" \t\r\n")]
    public void Read_WhenLineEndsDiffer_GivesTheSameReadings(string lineEnd)
    {
        var expected = SampleFiles.Read(SampleProfiles.Sugar(), SampleFiles.Sugar).Readings;
        var text = SampleFiles.Sugar.Replace("\n", lineEnd, StringComparison.Ordinal);

        var actual = SampleFiles.Read(SampleProfiles.Sugar(), text).Readings;

        Assert.Equal(expected.Select(reading => reading with { Line = 0 }), actual.Select(reading => reading with { Line = 0 }));
    }

    [Fact]
    public void Read_WhenQuotedCellHoldsALineEnd_CountsLinesOn()
    {
        var text = SampleFiles.SugarHeader + "\nS26P01T03R2C,1,1,R,\"A\nB\",2026-01-14 08:30:00,0.1\nS26P01T03R2C,1,2,R,AB,2026-01-14 08:30:00,0.2\n";

        var readings = SampleFiles.Read(SampleProfiles.Sugar(), text).Readings;

        Assert.Equal([2, 4], readings.Select(reading => reading.Line));
        Assert.Equal("A\nB", readings[0].Operator);
    }

    [Fact]
    public void Read_WhenLinesAreSkippedAndCommented_StartsAtTheHeader()
    {
        var profile = SampleProfiles.Sugar(json =>
        {
            json["text"]!["headerLine"] = 3;
            json["text"]!["skipLines"] = 1;
            json["text"]!["commentPrefix"] = "#";
        });
        var text = "Analyser report \"A\nsecond line\n" + SampleFiles.SugarHeader + "\n,,,,,,g/L\n# comment, with \"quote\nS26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,0.1\n";

        var (outcome, readings) = SampleFiles.Read(profile, text);

        Assert.Empty(outcome.Faults);
        Assert.Equal(6, Assert.Single(readings).Line);
    }

    [Fact]
    public void Read_WhenBlocksStateTheirUnits_ConvertsEachValue()
    {
        var (outcome, readings) = SampleFiles.Read(SampleProfiles.Balance(), SampleFiles.Balance);

        Assert.Equal((ReadState.Complete, 2L, 4L), (outcome.State, outcome.Rows, outcome.Readings));

        // 7.5 lb = 7.5 x 453.59237 g (exact definition, I_conversions.csv).
        Assert.Equal([3571.2m, 284.5m, 3401.942775m, 284.5m], readings.Select(reading => reading.Value));
        Assert.Equal(["3571.2 g", "284.5 g", "7.5 lb", "0.2845 kg"], readings.Select(reading => reading.RawValue.Text));
        Assert.Equal(["g", "g", "lb", "kg"], readings.Select(reading => reading.RawUnit));
        Assert.Equal([1, 1, 6, 6], readings.Select(reading => reading.Line));
    }

    [Fact]
    public void Read_WhenBlocksArePartedByBlankLines_EndsEachThere()
    {
        var profile = SampleProfiles.Balance(json => json["text"]!["blockSeparator"] = "");

        var (outcome, readings) = SampleFiles.Read(profile, "\n" + SampleFiles.Balance.Replace("---\n", "\r\n", StringComparison.Ordinal).TrimEnd('\r', '\n') + "\n");

        Assert.Empty(outcome.Faults);
        Assert.Equal([3571.2m, 284.5m, 3401.942775m, 284.5m], readings.Select(reading => reading.Value));
    }

    // Keywords of ISO 28178 / CGATS.17 (from memory): SAMPLE_ID, SAMPLE_NAME, XYZ_X, LAB_L, NUMBER_OF_SETS, BEGIN_DATA.
    [Fact]
    public void Read_WhenFileIsColourText_TakesKeywordsAndDataSets()
    {
        var (outcome, readings) = SampleFiles.Read(SampleProfiles.Colour(), SampleFiles.Colour);

        Assert.Empty(outcome.Faults);
        Assert.Equal((ReadState.Complete, 2L, 6L), (outcome.State, outcome.Rows, outcome.Readings));
        Assert.Equal([62.70m, 3.10m, 28.40m, 62.30m, 3.3m, 28.0m], readings.Select(reading => reading.Value));
        Assert.All(readings, reading => Assert.Equal(("COL 1", "2026-01-14"), (reading.Instrument, reading.Run)));
        Assert.Equal([1, 1, 1, 2, 2, 2], readings.Select(reading => reading.Slice));
        Assert.Equal(["XYZ_X", "XYZ_Y", "XYZ_Z"], outcome.IgnoredColumns);
    }

    [Fact]
    public void Read_WhenFileIsFixedWidth_CutsItsFields()
    {
        var (outcome, readings) = SampleFiles.Read(SampleProfiles.FixedWidth(), SampleFiles.FixedWidth);

        Assert.Empty(outcome.Faults.Select(fault => fault.Describe("f")));
        Assert.Equal([4530m, 4120m], readings.Select(reading => reading.Value));
        Assert.Equal([2, 3], readings.Select(reading => reading.Line));
    }

    [Fact]
    public void Read_WhenEveryRowNamesItsQuantity_FollowsTheMap()
    {
        var (outcome, readings) = SampleFiles.Read(SampleProfiles.OneValue(), SampleFiles.OneValue);

        Assert.Empty(outcome.Faults);
        Assert.Equal((4, 3), (outcome.Rows, outcome.Readings));

        // 9.2 mg/dL = 0.092 g/L; 1.5 mmol/L of sucrose at 342.297 g/mol = 0.5134455 g/L (C_molar_masses.csv).
        Assert.Equal([("glucose_in_extract", 0.092m), ("sucrose_in_extract", 0.5134455m), ("extract_fresh_mass", 50.02m)], readings.Select(reading => (reading.Quantity.Name, reading.Value)));
        Assert.Equal(["mg/dL", "mmol/L", "g"], readings.Select(reading => reading.RawUnit));
    }

    [Fact]
    public void Read_WhenFileIsWhollyAboutFryBatches_GivesThem()
    {
        var profile = SampleProfiles.Sugar(json =>
        {
            json["kind"] = "bench";
            json["subject"] = "fry-batch";
            json.AsObject().Remove("controls");
            json["identity"]!.AsObject().Clear();
            json["identity"]!["run"] = new System.Text.Json.Nodes.JsonObject { ["column"] = "Run" };
            json["identity"]!["batch"] = new System.Text.Json.Nodes.JsonObject { ["column"] = "Batch" };
            json["quantities"]![0]!["quantity"] = "oil_start";
            json["quantities"]![0]!["column"] = "Oil";
            json["quantities"]![0]!["unit"] = "°F";
            json["quantities"]![0]!["max"] = 250;
        });

        var reading = Assert.Single(SampleFiles.Read(profile, "Run,Batch,Time,Oil\n5,B3,2026-01-14 08:30:00,360\n").Readings);

        // 360 degF is 182.2222 degC (I_conversions.csv), kept to 12 decimals.
        Assert.Equal((ReadingSubject.FryBatch, "B3", 182.222222222222m), (reading.Subject, reading.Material, reading.Value));
    }

    [Fact]
    public void Read_WhenRowKeyIsDeclared_JoinsItsCellsUnambiguously()
    {
        var profile = SampleProfiles.Sugar(json => json["rowKey"] = new System.Text.Json.Nodes.JsonArray("Operator", "Extract", "Sample"));
        string Key(string op, string extract, string sample) => Assert.Single(SampleFiles.Read(
            profile, $"{SampleFiles.SugarHeader}\n{sample},{extract},1,R,{op},2026-01-14 08:30:00,0.1\n").Readings).RowKey.ToString();

        Assert.Equal("AB|1|S26P01T03R2C", Key("AB", "1", "s26p01t03r2c"));
        Assert.Equal("a\\|b|1|S26P01T03R2C", Key("a|b", "1", "S26P01T03R2C"));
        Assert.NotEqual(Key("a", "b|c", "S26P01T03R2C"), Key("a|b", "c", "S26P01T03R2C"));
        Assert.NotEqual(Key("a\\", "b", "S26P01T03R2C"), Key("a", "\\b", "S26P01T03R2C"));
    }

    [Fact]
    public void Read_WhenUnknownColumnsAreLetPass_ListsThem()
    {
        var profile = SampleProfiles.Sugar(json => json["unknownColumns"] = "ignore");
        var text = SampleFiles.SugarHeader + ",Remark\nS26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,0.1,fine\n";

        var (outcome, readings) = SampleFiles.Read(profile, text);

        Assert.Single(readings);
        Assert.Equal(["Remark"], outcome.IgnoredColumns);
    }

    [Fact]
    public void Read_WhenBadRowsAreParked_ReadsTheOthersAndShowsWhy()
    {
        var profile = SampleProfiles.Sugar(json => json["badRows"] = "park");
        var text = SampleFiles.SugarHeader + "\nS26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,0,1\nS26P01T03R2C,1,2,R,AB,2026-01-14 08:30:00,abc\nS26P01T03R2C,1,3,R,AB,2026-01-14 08:30:00,0.3\n";

        var (outcome, readings) = SampleFiles.Read(profile, text);

        Assert.Equal((ReadState.Complete, 3L, 2L, 0L), (outcome.State, outcome.Rows, outcome.ParkedRowCount, outcome.FaultCount));
        Assert.Equal(0.3m, Assert.Single(readings).Value);
        Assert.Equal([(2, FaultCode.RaggedRow), (3, FaultCode.NumberFormat)], outcome.ParkedRows.Select(row => (row.Line, row.Fault.Code)));
    }

    [Fact]
    public void Read_WhenARowRefusesTheFile_HandsNothingOnAfterItAndFindsAllFaults()
    {
        var bad = string.Concat(Enumerable.Range(0, 30).Select(_ => "S26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,abc\n"));
        var good = "S26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,0.1\n";

        var (outcome, readings) = SampleFiles.Read(SampleProfiles.Sugar(), $"{SampleFiles.SugarHeader}\n{good}{bad}{good}");

        Assert.Equal((ReadState.Refused, 32L, 30L, 20, 1L), (outcome.State, outcome.Rows, outcome.FaultCount, outcome.Faults.Count, outcome.Readings));
        Assert.Single(readings);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void Read_WhenCultureIsAnother_GivesTheSameReadings(string culture)
    {
        var lower = SampleFiles.Sugar.Replace("S26P01T03R2C", "s26p01t03r2c", StringComparison.Ordinal);
        var expected = SampleFiles.Read(SampleProfiles.Sugar(), SampleFiles.Sugar).Readings;
        using var _ = new Text.InCulture(culture);

        Assert.Equal(expected, SampleFiles.Read(SampleProfiles.Sugar(), lower).Readings);
        Assert.Equal("f.csv line 1234, column 3 'x': found '1'; expected a whole number from 0 to 9999; check the export settings of the instrument or its profile.",
            new Fault(FaultCode.CountFormat, 1234, 3, "x", "1", "a whole number from 0 to 9999", "check the export settings of the instrument or its profile").Describe("f.csv"));
    }

    [Fact]
    public void Read_WhenCancelled_StopsWithThat()
    {
        using var stream = new MemoryStream(SampleFiles.Bytes(SampleProfiles.Sugar(), SampleFiles.Sugar));

        Assert.Throws<OperationCanceledException>(() =>
            FileReader.Read(SampleProfiles.Sugar(), stream, "f.csv", new CollectingSink(), ReadLimits.Default, new CancellationToken(canceled: true)));
    }

    [Fact]
    public void DryRun_WhenFileIsLonger_ShowsTheFirstRowsAndTheWholeOutcome()
    {
        using var stream = new MemoryStream(SampleFiles.Bytes(SampleProfiles.Balance(), SampleFiles.Balance));

        var result = DryRun.Read(SampleProfiles.Balance(), stream, "balance.txt", 1, ReadLimits.Default, TestContext.Current.CancellationToken);

        Assert.Equal([3571.2m, 284.5m], result.Readings.Select(reading => reading.Value));
        Assert.Equal(("balance.txt", 2L), (result.Outcome.FileName, result.Outcome.Rows));
    }
}
