using LabPipeline.Science.Barcodes;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Barcodes;

/// <summary>Sample barcodes; the check characters are those of H_iso7064_examples.csv, the rest is the laboratory's own rule (no source).</summary>
public sealed class SampleBarcodeTests
{
    [Theory]
    [InlineData("S26P01T03R2C")]
    [InlineData("s26p01t03r2c")]
    [InlineData(" S26P01T03R2C\r")]
    [InlineData("S26P01T03R2C\t")]
    [InlineData("S26P01T03R2C\r\n")]
    public void Parse_WhenScannerAddsLineEnds_GivesThePrintedText(string scanned)
    {
        var barcode = SampleBarcode.Parse(scanned);

        Assert.Equal("S26P01T03R2C", barcode.Text);
        Assert.Equal("S26P01T03R2", barcode.Payload);
        Assert.Equal('C', barcode.Check);
    }

    [Theory]
    [InlineData("S26P01TO3R2C", BarcodeRefusal.AmbiguousLetter)]
    [InlineData("S26P01T03R2Q", BarcodeRefusal.CheckCharacter)]
    [InlineData("S26P01T03R3C", BarcodeRefusal.CheckCharacter)]
    [InlineData("S26P01T03R2", BarcodeRefusal.CheckCharacter)]
    [InlineData("", BarcodeRefusal.Empty)]
    [InlineData(" \t\r\n", BarcodeRefusal.Empty)]
    [InlineData("1E5", BarcodeRefusal.Length)]
    [InlineData("S26P01T03R2CS26P01T03R2CS26P01T03R2C", BarcodeRefusal.Length)]
    [InlineData("S26-P01-T03C", BarcodeRefusal.Character)]
    [InlineData("S26 P01T03R2C", BarcodeRefusal.Character)]
    [InlineData("S26P01T03R2\u0421", BarcodeRefusal.Character)]
    [InlineData("\u017F26P01T03R2C", BarcodeRefusal.Character)]
    [InlineData("2.60E+07", BarcodeRefusal.Character)]
    public void Read_WhenTextIsNoBarcode_SaysWhy(string scanned, BarcodeRefusal expected)
    {
        var reading = SampleBarcode.Read(scanned);

        Assert.Null(reading.Barcode);
        Assert.Equal(expected, reading.Refusal);
        Assert.Contains("expected", reading.Explanation, StringComparison.Ordinal);
        Assert.Throws<FormatException>(() => SampleBarcode.Parse(scanned));
    }

    [Fact]
    public void Read_WhenCheckFails_DoesNotGiveTheAnswerAway() =>
        Assert.DoesNotContain("'C'", SampleBarcode.Read("S26P01T03R29").Explanation, StringComparison.Ordinal);

    [Fact]
    public void FromPayload_OnTheExamples_RoundTrips()
    {
        var ours = ReferenceTable.Load("H_iso7064_examples.csv").Rows
            .Where(row => row.Text("system") == "MOD 37,36" && !row.Text("payload").AsSpan().ContainsAny("IOQ"));
        foreach (var row in ours)
        {
            var barcode = SampleBarcode.FromPayload(row.Text("payload"));

            Assert.Equal(row.Text("full"), barcode.Text);
            Assert.Equal(barcode, SampleBarcode.Parse(barcode.Text));
        }
    }

    [Theory]
    [InlineData("POT26LO10")]
    [InlineData("s26p01")]
    [InlineData("AB")]
    [InlineData("S26_P01")]
    public void FromPayload_WhenPayloadIsNotOurs_Throws(string payload) =>
        Assert.Contains(payload, Assert.Throws<ArgumentException>(() => SampleBarcode.FromPayload(payload)).Message, StringComparison.Ordinal);

    [Fact]
    public void Series_Always_LeavesOutAmbiguousCheckCharacters()
    {
        var barcodes = SampleBarcode.Series("26", "NT", 1).ToList();

        Assert.All(barcodes, barcode => Assert.False(barcode.Text.AsSpan().ContainsAny("IOQ")));
        Assert.Equal(barcodes.Count, barcodes.Distinct().Count());
        // Three of 36 check characters are left out.
        Assert.InRange(barcodes.Count, 9999 * 0.90, 9999 * 0.93);
        Assert.All(barcodes, barcode => Assert.Equal(barcode, SampleBarcode.Parse(barcode.Text)));
    }

    [Fact]
    public void Series_WhenACodeHoldsALetterO_ThrowsBeforeTheFirstLabel() =>
        Assert.Throws<ArgumentException>(() => SampleBarcode.Series("26", "NO", 1));
}
