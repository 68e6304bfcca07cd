using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Reading;
using LabPipeline.Intake.Tests.Text;

namespace LabPipeline.Intake.Tests.Reading;

/// <summary>How a file's end is judged, its bytes, and its bounds.</summary>
public sealed class FileEndTests
{
    private const string Row = "S26P01T03R2C,1,1,R,AB,2026-01-14 08:30:00,0.1";

    [Fact]
    public void Read_WhenFileIsEmpty_IsHeldWhereItsContentShowsTheEnd()
    {
        var held = SampleFiles.Read(SampleProfiles.Sugar(), "").Outcome;
        var refused = SampleFiles.Read(SampleProfiles.OneValue(), "").Outcome;

        Assert.Equal((ReadState.Held, ReadState.Refused), (held.State, refused.State));
        Assert.Equal("f.csv: found nothing; expected rows of readings; export the file again.", Assert.Single(refused.Faults).Describe("f.csv"));
    }

    [Theory]
    [InlineData(SampleFiles.SugarHeader + "\n")]
    [InlineData(SampleFiles.SugarHeader + "\n\n \r\n")]
    public void Read_WhenThereIsOnlyAHeader_Refuses(string text)
    {
        var outcome = SampleFiles.Read(SampleProfiles.Sugar(), text).Outcome;

        Assert.Equal((ReadState.Refused, FaultCode.HeaderOnly), (outcome.State, Assert.Single(outcome.Faults).Code));
    }

    [Fact]
    public void Read_WhenHeaderLineIsBehindTheEnd_Refuses()
    {
        var profile = SampleProfiles.Sugar(json => json["text"]!["headerLine"] = 5);

        Assert.Equal(
            ["f.csv line 3: found the end of the file before line 5; expected the column names there; check that this is the profile of this instrument."],
            SampleFiles.Faults(profile, "a\nb\n"));
    }

    [Theory]
    [InlineData(SampleFiles.SugarHeader + "\n" + Row)]
    [InlineData(SampleFiles.SugarHeader + "\n" + Row + "\n" + "S26P01T03R2C,1,2,R,AB,2026-01-14 08:30:00,0.")]
    [InlineData(SampleFiles.SugarHeader + "\n" + Row + "\n" + "S26P01T03R2C,1,2,R,\"AB")]
    [InlineData(SampleFiles.SugarHeader)]
    [InlineData(SampleFiles.SugarHeader + "\n" + Row + "\n  ")]
    public void Read_WhenLastLineHasNoEnd_IsHeldAndThatLineIsNotRead(string text)
    {
        var (outcome, readings) = SampleFiles.Read(SampleProfiles.Sugar(), text);

        Assert.Equal(ReadState.Held, outcome.State);
        Assert.Contains(outcome.Faults, fault => fault.Code == FaultCode.LastLineCut);
        Assert.All(readings, reading => Assert.Equal(2, reading.Line));
    }

    [Fact]
    public void Read_WhenLastLineHasNoEndAndFileWasRenamedIn_ReadsIt()
    {
        var (outcome, readings) = SampleFiles.Read(SampleProfiles.OneValue(), "S26P01T03R2C;9;GLU;9,2;mg/dL");

        Assert.Equal((ReadState.Complete, 1), (outcome.State, readings.Count));
    }

    [Fact]
    public void Read_WhenLastLineIsCut_SaysWhatItWaitsFor() => Assert.Equal(
        [$"f.csv line 2: found '{Row}'; expected a line end after the last line; wait until the file is written to its end."],
        SampleFiles.Faults(SampleProfiles.Sugar(), $"{SampleFiles.SugarHeader}\n{Row}"));

    [Theory]
    [InlineData("Peel weights\nS26P01T03R2C  17   4,530\n")]
    [InlineData("Peel weights\nS26P01T03R2C  17   4,530\nRecor")]
    [InlineData("Peel weights\nS26P01T03R2C  17   4,5")]
    public void Read_WhenTrailerIsMissing_IsHeld(string text)
    {
        var outcome = SampleFiles.Read(SampleProfiles.FixedWidth(), text).Outcome;

        Assert.Equal(ReadState.Held, outcome.State);
        Assert.EndsWith(
            "found the end of the file; expected a last line beginning with 'Records:'; wait until the file is written to its end.",
            outcome.Faults[^1].Describe("f.csv"),
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Records: 1")]
    [InlineData("Records: 1\n\n")]
    public void Read_WhenTrailerIsThere_IsComplete(string trailer) =>
        Assert.Equal(ReadState.Complete, SampleFiles.Read(SampleProfiles.FixedWidth(), $"Peel weights\nS26P01T03R2C  17   4,530\n{trailer}").Outcome.State);

    [Fact]
    public void Read_WhenTextFollowsTheTrailer_Refuses() => Assert.Equal(
        ["f.csv line 4: found 'S26P01T03R3A  17   4,530'; expected nothing after the last line; export the file again."],
        SampleFiles.Faults(SampleProfiles.FixedWidth(), "Peel weights\nS26P01T03R2C  17   4,530\nRecords: 1\nS26P01T03R3A  17   4,530\n"));

    [Fact]
    public void Read_WhenEndDataIsMissing_IsHeld()
    {
        var cut = SampleFiles.Colour.LastIndexOf("END_DATA", StringComparison.Ordinal);

        Assert.Equal(ReadState.Held, SampleFiles.Read(SampleProfiles.Colour(), SampleFiles.Colour[..cut]).Outcome.State);
        Assert.Equal(ReadState.Held, SampleFiles.Read(SampleProfiles.Colour(), SampleFiles.Colour[..(cut + 5)]).Outcome.State);
        Assert.Equal(ReadState.Complete, SampleFiles.Read(SampleProfiles.Colour(), SampleFiles.Colour[..^1]).Outcome.State);
    }

    [Theory]
    [InlineData("utf-8", new byte[] { 0xB5 }, "f.csv line 2: found bytes that are no utf-8 at byte 59; expected text in utf-8; check the export settings of the instrument or its profile.")]
    [InlineData("utf-8", new byte[] { 0x00 }, "f.csv line 2: found a null character at byte 59; expected text in utf-8; check the export settings of the instrument or its profile.")]
    [InlineData("utf-8", new byte[] { 0xEF, 0xBF, 0xBD }, "f.csv line 2: found a replacement character (U+FFFD) at byte 59; expected the character it stands for; export the file again.")]
    [InlineData("windows-1252", new byte[] { 0x81 }, "f.csv line 2: found bytes that are no windows-1252 at byte 59; expected text in windows-1252; check the export settings of the instrument or its profile.")]
    public void Read_WhenBytesAreNoText_RefusesWithTheirOffset(string encoding, byte[] wrong, string expected)
    {
        var profile = SampleProfiles.Sugar(json => json["text"]!["encoding"] = encoding);
        byte[] start = [.. SampleFiles.Bytes(profile, $"{SampleFiles.SugarHeader}\nS26P01T0")];
        byte[] bytes = [.. start, .. wrong, .. SampleFiles.Bytes(profile, "3R2C,1,1,R,AB,2026-01-14 08:30:00,0.1\n")];

        var outcome = SampleFiles.Read(profile, bytes).Outcome;

        Assert.Equal(59, start.Length);
        Assert.Equal((ReadState.Refused, expected), (outcome.State, Assert.Single(outcome.Faults).Describe("f.csv")));
    }

    [Fact]
    public void Read_WhenMarkContradictsOrMisses_Refuses()
    {
        var utf8 = SampleProfiles.Sugar();
        var utf16 = SampleProfiles.Sugar(json => json["text"]!["encoding"] = "utf-16");

        Assert.Equal(
            "f.csv: found a byte order mark of another encoding; expected text in utf-8; check the export settings of the instrument or its profile.",
            Assert.Single(SampleFiles.Read(utf8, [0xFF, 0xFE, 0x41, 0x00]).Outcome.Faults).Describe("f.csv"));
        Assert.Equal(
            "f.csv: found no byte order mark; expected one of utf-16; declare utf-16le or utf-16be in the profile.",
            Assert.Single(SampleFiles.Read(utf16, [0x41, 0x00]).Outcome.Faults).Describe("f.csv"));
    }

    [Fact]
    [Shows(20)]
    public void Read_WhenLineIsAtItsLimit_TakesItAndNotOneMore()
    {
        var limits = new ReadLimits { MaxLineLength = 150, MaxCellLength = 100 };
        string Text(int length) => SampleFiles.SugarHeader + "\n" + Row.Replace("AB", new string('A', length - Row.Length + 2), StringComparison.Ordinal) + "\n";

        // The line end counts: 149 characters and a line feed are 150.
        Assert.Empty(SampleFiles.Faults(SampleProfiles.Sugar(), Text(134), limits));
        Assert.Equal(
            ["f.csv line 2, column 5 'Operator': found 101 characters; expected at most 100; check that this is the profile of this instrument."],
            SampleFiles.Faults(SampleProfiles.Sugar(), Text(Row.Length - 2 + 101), limits));
        Assert.Equal(
            ["f.csv line 2: found a row of more than 150 characters; expected shorter rows; check that this is the profile of this instrument."],
            SampleFiles.Faults(SampleProfiles.Sugar(), Text(150), limits with { MaxCellLength = 4096 }));
        Assert.Empty(SampleFiles.Faults(SampleProfiles.Sugar(), Text(149), limits with { MaxCellLength = 4096 }));
    }

    [Fact]
    [Shows(20)]
    public void Read_WhenThereAreTooManyColumns_Refuses()
    {
        var limits = new ReadLimits { MaxColumns = 7 };

        Assert.Empty(SampleFiles.Faults(SampleProfiles.Sugar(), SampleFiles.Sugar, limits));
        Assert.Equal(
            ["f.csv line 1: found more than 7 columns; expected at most 7; check that this is the profile of this instrument."],
            SampleFiles.Faults(SampleProfiles.Sugar(), SampleFiles.SugarHeader + ",More\n", limits));
    }

    public static TheoryData<string, byte, string> Floods => new()
    {
        { "delimited", (byte)'x', FaultCode.LineTooLong },
        { "delimited", (byte)'"', FaultCode.UnclosedQuote },
        { "delimited", (byte)' ', FaultCode.LineTooLong },
        { "delimited", (byte)',', FaultCode.TooManyColumns },
        { "blocks", (byte)'x', FaultCode.LineTooLong },
        { "fixed", (byte)'x', FaultCode.LineTooLong },
        { "colour", (byte)'x', FaultCode.LineTooLong },
    };

    // 200 MB without a line end: refused after the first buffers. The allocation bound is 1 % of the input.
    [Theory]
    [Shows(20)]
    [MemberData(nameof(Floods))]
    public void Read_WhenOneLineIsEndless_RefusesInBoundedMemory(string layout, byte filling, string expected)
    {
        var profile = layout switch
        {
            "blocks" => SampleProfiles.Balance(),
            "fixed" => SampleProfiles.FixedWidth(),
            "colour" => SampleProfiles.Colour(),
            _ => SampleProfiles.Sugar(),
        };
        using var stream = new EndlessStream(filling, 200_000_000);
        var before = GC.GetAllocatedBytesForCurrentThread();

        var outcome = FileReader.Read(profile, stream, "f.csv", new CollectingSink(), ReadLimits.Default, TestContext.Current.CancellationToken);

        Assert.Equal((ReadState.Refused, expected), (outcome.State, outcome.Faults[0].Code));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 2_000_000);
        Assert.InRange(stream.Position, 0, 1_000_000);
    }

    // A quote that never closes swallows line ends; the row bound stops it.
    [Fact]
    [Shows(24)]
    public void Read_WhenQuoteNeverCloses_RefusesAtTheRowBound()
    {
        var text = SampleFiles.SugarHeader + "\nS26P01T03R2C,1,1,R,\"AB\n" + string.Concat(Enumerable.Repeat(Row + "\n", 20_000));

        var outcome = SampleFiles.Read(SampleProfiles.Sugar(), text).Outcome;

        Assert.Equal((ReadState.Refused, FaultCode.UnclosedQuote), (outcome.State, Assert.Single(outcome.Faults).Code));
    }

    [Fact]
    public void Read_WhenStreamTrickles_GivesTheSame()
    {
        var expected = SampleFiles.Read(SampleProfiles.Sugar(), SampleFiles.Sugar).Readings;
        foreach (var chunk in new[] { 1, 2, 3, 7, 64 })
        {
            using var stream = new TricklingStream(SampleFiles.Bytes(SampleProfiles.Sugar(), SampleFiles.Sugar), chunk);
            var sink = new CollectingSink();

            FileReader.Read(SampleProfiles.Sugar(), stream, "f.csv", sink, ReadLimits.Default, TestContext.Current.CancellationToken);

            Assert.Equal(expected, sink.Readings);
        }
    }

    [Fact]
    public void Read_WhenFileIsLongerThanTheWindow_LosesNoRowAndAllocatesNothingForIt()
    {
        long Allocated(int rows)
        {
            using var stream = new RepeatingStream(SampleFiles.SugarHeader + "\n", Row + "\n", rows);
            var before = GC.GetAllocatedBytesForCurrentThread();
            var sink = new CountingSink();
            var outcome = FileReader.Read(SampleProfiles.Sugar(), stream, "f.csv", sink, ReadLimits.Default, TestContext.Current.CancellationToken);
            Assert.Equal((ReadState.Complete, (long)rows, rows * 0.1m), (outcome.State, outcome.Readings, sink.Sum));
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        // The first reading of a process allocates for itself.
        Allocated(1_000);
        var small = Allocated(1_000);
        var large = Allocated(100_000);

        // No row leaves anything to the collector; recompilation on this thread may allocate a little.
        Assert.InRange(large - small, -50_000, 50_000);
    }
}
