using LabPipeline.Intake.Reading;
using LabPipeline.Intake.Tests.Reading;
using LabPipeline.Intake.Text;
using LabPipeline.Testing;
using NodaTime;

namespace LabPipeline.Intake.Tests.Text;

/// <summary>Every row of I_text_parsing_cases.csv. A row without a check here fails the last test.</summary>
public sealed class TextParsingCasesTests
{
    private static readonly ReferenceTable Cases = ReferenceTable.Load("I_text_parsing_cases.csv");

    private static readonly Dictionary<(string Text, string Context), Action<ReferenceRow>> Checks = new()
    {
        [("0,052", "file declared decimal comma")] = row => IsNumber(row, NumberFormat.Comma),
        [("0,052", "file declared decimal point")] = row => Assert.Equal(NumberFault.WrongMark, NumberGrammar.Parse(row.Text("text"), NumberFormat.Point, out _)),
        [("1.234,5", "decimal comma")] = row => IsNumber(row, new NumberFormat(',', GroupMark.Point)),
        [("1 234,5", "decimal comma, space or U+00A0/U+202F group")] = row => IsNumber(row, new NumberFormat(',', GroupMark.Space)),
        [("ND", "result")] = IsMissing,
        [("-0.002", "sucrose difference")] = IsKeptSigned,
        [("", "result")] = IsMissing,
        [("0", "balance mass")] = row => Assert.Equal([FaultCode.ValueNotPositive], Balance(row.Text("text")).Faults.Select(fault => fault.Code)),
        [("052", "sample id")] = IsText,
        [("1E5", "sample id")] = IsText,
        [("2026-03-29 02:30", "local time, Europe/Berlin")] = row => Assert.Equal(TimestampFault.Skipped, Time(row, "Europe/Berlin")),
        [("2026-11-01 01:30", "local time, America/Chicago")] = row => Assert.Equal(TimestampFault.Ambiguous, Time(row, "America/Chicago")),
        [("2026-03-03T04:30:00Z", "instant")] = IsThatLocalTime,
        [("S26P01T03R2C", "id with MOD 37,36")] = IsBarcode,
        [("s26p01t03r2c", "id lower case")] = IsBarcode,
        [("S26P01TO3R2C", "letter O for zero")] = row => Assert.Equal([FaultCode.BarcodeFormat], Sugar(row.Text("text"), "0.05").Outcome.Faults.Select(fault => fault.Code)),
        [(" S26P01T03R2C\\r", "scanner suffix")] = IsBarcode,
    };

    public static TheoryData<int> Lines => [.. Cases.Rows.Select(row => row.Line)];

    [Theory]
    [Shows(22)]
    [MemberData(nameof(Lines))]
    public void Text_WhenOfTheReferenceTable_IsReadAsExpected(int line)
    {
        var row = Cases.Rows.Single(candidate => candidate.Line == line);

        Checks[(row.Text("text"), row.Text("context"))](row);
    }

    [Fact]
    public void ReferenceTable_HasNoCaseThatIsNotChecked() =>
        Assert.Equal(Checks.Count, Cases.Rows.Select(row => (row.Text("text"), row.Text("context"))).Intersect(Checks.Keys).Count());

    private static void IsNumber(ReferenceRow row, NumberFormat format)
    {
        Assert.Equal(NumberFault.None, NumberGrammar.Parse(row.Text("text"), format, out var value));
        Assert.Equal(row.Exact("expected"), value);
    }

    private static void IsMissing(ReferenceRow row)
    {
        var (outcome, readings) = Sugar("S26P01T03R2C", row.Text("text"));

        Assert.Equal(ReadState.Complete, outcome.State);
        Assert.Empty(readings);
        Assert.Equal(1, outcome.MissingValues[row.Text("text")]);
    }

    // The flag is a finding of the quality rules; reading must only keep the sign.
    private static void IsKeptSigned(ReferenceRow row) =>
        Assert.Equal(-0.002m, Assert.Single(Sugar("S26P01T03R2C", row.Text("text")).Readings).Value);

    // Ids of extracts are free text: the leading zero and the letter stay.
    private static void IsText(ReferenceRow row)
    {
        var text = $"{SampleFiles.SugarHeader}\nS26P01T03R2C,{row.Text("text")},1,RUN-1,AB,2026-01-14 08:30:00,0.05\n";

        Assert.Equal(row.Text("text"), Assert.Single(SampleFiles.Read(SampleProfiles.Sugar(), text).Readings).Extract);
    }

    private static void IsThatLocalTime(ReferenceRow row)
    {
        var pattern = TimestampPattern.Compile("yyyy-MM-ddTHH:mm:ssZ", out _)!;
        var grammar = new TimestampGrammar([pattern], DateTimeZone.Utc, AmbiguousTime.Refuse);

        Assert.Equal(TimestampFault.None, grammar.Parse(row.Text("text"), out var instant));
        var chicago = Instant.FromDateTimeOffset(instant).InZone(DateTimeZoneProviders.Tzdb["America/Chicago"]);
        Assert.Equal(row.Text("expected"), $"{chicago.LocalDateTime:uuuu-MM-dd HH:mm} in America/Chicago");
    }

    private static void IsBarcode(ReferenceRow row)
    {
        var text = row.Text("text").Replace("\\r", "\r", StringComparison.Ordinal);

        Assert.Equal("S26P01T03R2C", Assert.Single(Sugar(text, "0.05").Readings).Barcode);
    }

    private static TimestampFault Time(ReferenceRow row, string zone)
    {
        var pattern = TimestampPattern.Compile("yyyy-MM-dd HH:mm", out _)!;
        return new TimestampGrammar([pattern], DateTimeZoneProviders.Tzdb[zone], AmbiguousTime.Refuse).Parse(row.Text("text"), out _);
    }

    private static (ReadOutcome Outcome, IReadOnlyList<ParsedReading> Readings) Sugar(string barcode, string value) =>
        SampleFiles.Read(SampleProfiles.Sugar(), $"{SampleFiles.SugarHeader}\n{barcode},1,1,RUN-1,AB,2026-01-14 08:30:00,{value}\n");

    private static ReadOutcome Balance(string air) =>
        SampleFiles.Read(SampleProfiles.Balance(), $"Sample = S26P01T03R2C\nRun = 7\nAir = {air} g\nWater = 284.5 g\n---\n").Outcome;
}
