using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Reading;
using LabPipeline.Intake.Tests.Text;
using LabPipeline.Intake.Text;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Tests.Reading;

/// <summary>What holds for every file: cut anywhere, damaged anywhere, or made at random.</summary>
public sealed class FileReaderProperties
{
    private const string Columns = "Sample,Run,Extract,Operator,Glucose";

    private static readonly Profile FreeText = SampleProfiles.Sugar(json =>
    {
        json.AsObject().Remove("time");
        json["files"]!["complete"] = "renamed-in";
        json["files"]!.AsObject().Remove("quietSeconds");
        json["identity"]!.AsObject().Remove("replicate");
        json["rowKey"] = new System.Text.Json.Nodes.JsonArray("Run");
        json.AsObject().Remove("controls");
        json["badRows"] = "park";
    });

    private static readonly HashSet<string> Codes = [.. typeof(FaultCode).GetFields().Select(field => (string)field.GetRawConstantValue()!)];

    public static TheoryData<string> PromisedEnds => ["sugar", "sugar-crlf", "sugar-utf16", "sugar-bom", "balance", "colour", "fixed"];

    [Theory]
    [Shows(7)]
    [MemberData(nameof(PromisedEnds))]
    public void Read_WhenFileIsCutAtAnyByte_NeverChangesANumber(string name)
    {
        var (profile, bytes) = File(name);
        var whole = SampleFiles.Read(profile, bytes);
        Assert.Equal(ReadState.Complete, whole.Outcome.State);
        var complete = 0;
        for (var length = 0; length < bytes.Length; length++)
        {
            var (outcome, readings) = SampleFiles.Read(profile, bytes[..length]);

            Assert.Equal(whole.Readings.Take(readings.Count), readings);
            complete += outcome.State == ReadState.Complete ? 1 : 0;
        }

        // Only whole rows can be missing unnoticed, where the profile promises no more than line ends; with a trailer, only what stands behind its text.
        Assert.InRange(complete, 0, profile.Files.Complete == Completeness.Trailer ? 3 : (int)whole.Outcome.Rows * 2);
    }

    [Fact]
    public void Read_WhenRenamedInFileIsCut_OnlyItsLastRowCanDiffer()
    {
        var profile = SampleProfiles.OneValue();
        var bytes = SampleFiles.Bytes(profile, SampleFiles.OneValue);
        var whole = SampleFiles.Read(profile, bytes).Readings;
        for (var length = 0; length < bytes.Length; length++)
        {
            var readings = SampleFiles.Read(profile, bytes[..length]).Readings;

            Assert.Equal(whole.Take(Math.Max(0, readings.Count - 1)), readings.Take(Math.Max(0, readings.Count - 1)));
        }
    }

    [Property(MaxTest = 1500)]
    public Property Read_WhenBytesAreDamaged_EndsInAListedOutcome() => Prop.ForAll(
        Arb.From(from name in Gen.Elements("sugar", "sugar-crlf", "sugar-utf16", "sugar-bom", "balance", "colour", "fixed", "one-value")
                 from flips in Gen.NonEmptyListOf(Gen.Choose(0, int.MaxValue).SelectMany(at => Gen.Choose(0, 255).Select(value => (at, (byte)value))))
                 select (name, flips)),
        damage =>
        {
            var (profile, bytes) = File(damage.name);
            foreach (var (at, value) in damage.flips)
            {
                bytes[at % bytes.Length] = value;
            }

            return IsListed(profile, bytes);
        });

    [Property(MaxTest = 500)]
    public bool Read_WhenBytesAreRandom_EndsInAListedOutcome(byte[] bytes) =>
        new[] { "sugar", "sugar-utf16", "balance", "colour", "fixed", "one-value" }.All(name => IsListed(File(name).Profile, bytes));

    [Property(MaxTest = 3000)]
    [Shows(24)]
    public Property Read_WhenTextIsMadeAtRandom_AgreesWithTheReference() => Prop.ForAll(
        Arb.From(Gen.ListOf(Gen.Elements(
            "S26P01T03R2C", "s26p01t03r2c", "0.1", "5,4", "x", "µ", "\"", "\"", "\"\"", ",", ",", ",", ",", "\n", "\n", "\r\n", " ", "\t", "<1", "ND",
            "S26P01T03R2C,r,e,o,0.25\n", "\"S26P01T03R2C\",\"r,\"\"\n\",e,\"o\",0.5\r\n"))),
        pieces => AgreesWithTheReference(string.Concat(pieces)));

    [Theory]
    [InlineData("S26P01T03R2C,r,\"S26P01T03R2C,r,e,o,0.25\nS26P01T03R2C\",5,4")] // 36 characters, once found at random
    [InlineData("S26P01T03R2C,r,\"a\nb\",5,4")]
    public void Read_WhenAQuoteClosesLate_AgreesWithTheReference(string row) => Assert.True(AgreesWithTheReference(row));

    [Fact]
    public void Read_WhenRowsStraddleTheWindow_AgreesWithTheReference()
    {
        // Lengths around the decoder's chunk and the longest row, so that rows end at, before and behind every edge.
        for (var length = 32_700; length < 32_800; length += 3)
        {
            var operatorName = new string('o', 100);
            var row = $"S26P01T03R2C,\"r\"\"{length}\n\",e,{operatorName},0.5\n";
            var text = string.Concat(Enumerable.Repeat(row, (length / row.Length) + 3)) + new string(' ', length % 97) + "\n" + row;

            Assert.True(AgreesWithTheReference(text));
        }
    }

    [Fact]
    public void Read_WhereverInARowAMarkStands_AgreesWithTheReference()
    {
        // Rows are divided sixteen characters at once where they have no quote: marks on every place behind the barcode, parts of which may be barcodes too.
        foreach (var mark in new[] { "\"", ",", "\n", "\r\n", "\"\"", ",\"", "\"," })
        {
            var row = $"S26P01T03R2C,run 1,e,{new string('o', 30)},0.5\n";
            for (var place = "S26P01T03R2C".Length; place <= row.Length; place++)
            {
                var marked = row.Insert(place, mark);

                Assert.True(AgreesWithTheReference(marked + row), marked);
                Assert.True(AgreesWithTheReference(row + marked[..^1]), marked);
            }
        }
    }

    private static bool AgreesWithTheReference(string text)
    {
        text = Columns + "\n" + text;
        var (rows, broken) = DelimitedReference.Read(text);
        var expected = rows.Skip(1).Select(Expected).ToList();

        var (outcome, readings) = SampleFiles.Read(FreeText, text);

        var good = expected.Where(row => row.Good && row.Value is not null).Select(row => (row.Line, row.Run, row.Extract, row.Operator, row.Value!.Value, row.Below));
        var parked = expected.Where(row => !row.Good).Select(row => row.Line).ToList();
        var state = broken || rows.Count == 1 ? ReadState.Refused : ReadState.Complete;
        return state == outcome.State
            && good.SequenceEqual(readings.Select(reading => (reading.Line, reading.Run, reading.Extract!, reading.Operator!, reading.Value, reading.BelowLimit)))
            && parked.SequenceEqual(outcome.ParkedRows.Select(row => row.Line))
            && rows.Count - 1 == outcome.Rows;
    }

    private static (bool Good, int Line, string Run, string Extract, string Operator, decimal? Value, bool Below) Expected((int Line, List<string> Cells) row)
    {
        if (row.Cells is not [var sample, { Length: > 0 } run, { Length: > 0 } extract, { Length: > 0 } by, var value] || !sample.Equals("S26P01T03R2C", StringComparison.OrdinalIgnoreCase))
        {
            return (false, row.Line, "", "", "", null, false);
        }

        // A quote that closes late makes long texts of neighbours; what the warehouse has no room for is not good.
        if (run.Length > FactText.LongestRun || extract.Length > FactText.LongestExtract || by.Length > FactText.LongestOperator)
        {
            return (false, row.Line, "", "", "", null, false);
        }

        if (value is "" or "ND")
        {
            return (true, row.Line, run, extract, by, null, false);
        }

        var below = value.StartsWith('<');
        var number = NumberReference.Parse(below ? value[1..].Trim(' ', '\t', '\r') : value, NumberFormat.Point);
        var good = number is >= -1m and <= 10m && !(below && number <= 0m);
        return (good, row.Line, run, extract, by, good ? number : null, below);
    }

    private static bool IsListed(Profile profile, byte[] bytes)
    {
        var (outcome, readings) = SampleFiles.Read(profile, bytes);
        var faultsFit = outcome.State == ReadState.Complete ? outcome.FaultCount == 0 : outcome.FaultCount > 0;
        return faultsFit
            && outcome.Faults.All(fault => Codes.Contains(fault.Code) && !fault.Describe("f.csv").Any(char.IsControl))
            && readings.Count == outcome.Readings + outcome.ControlReadings + outcome.FryBatchReadings;
    }

    private static (Profile Profile, byte[] Bytes) File(string name)
    {
        var utf16 = SampleProfiles.Sugar(json => json["text"]!["encoding"] = "utf-16le");
        return name switch
        {
            "sugar" => (SampleProfiles.Sugar(), Encoding.UTF8.GetBytes(SampleFiles.Sugar)),
            "sugar-crlf" => (SampleProfiles.Sugar(), Encoding.UTF8.GetBytes(SampleFiles.Sugar.Replace("\n", "\r\n", StringComparison.Ordinal))),
            "sugar-bom" => (SampleProfiles.Sugar(), [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(SampleFiles.Sugar.Replace("AB", "Ä🥔", StringComparison.Ordinal))]),
            "sugar-utf16" => (utf16, Encoding.Unicode.GetBytes(SampleFiles.Sugar)),
            "balance" => (SampleProfiles.Balance(), Encoding.Latin1.GetBytes(SampleFiles.Balance)),
            "colour" => (SampleProfiles.Colour(), Encoding.UTF8.GetBytes(SampleFiles.Colour)),
            "fixed" => (SampleProfiles.FixedWidth(), Encoding.Latin1.GetBytes(SampleFiles.FixedWidth)),
            _ => (SampleProfiles.OneValue(), Encoding.UTF8.GetBytes(SampleFiles.OneValue)),
        };
    }
}
