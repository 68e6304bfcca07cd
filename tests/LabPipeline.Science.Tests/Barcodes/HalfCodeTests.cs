using LabPipeline.Science.Barcodes;

namespace LabPipeline.Science.Tests.Barcodes;

/// <summary>Codes of halves; the check characters are those of H_iso7064_examples.csv, the endings are the laboratory's own rule (no source).</summary>
public sealed class HalfCodeTests
{
    [Theory]
    [InlineData("S26P01T03R2C", null)]
    [InlineData("S26P01T03R2C-S", TuberHalf.Sugar)]
    [InlineData("S26P01T03R2C-F", TuberHalf.Fry)]
    [InlineData(" s26p01t03r2c-f\r\n", TuberHalf.Fry)]
    public void Read_WithOrWithoutAHalf_GivesTheSamplesBarcode(string scanned, TuberHalf? half)
    {
        var (reading, read) = HalfCode.Read(scanned);

        Assert.Equal(("S26P01T03R2C", half), (reading.Barcode?.Text, read));
    }

    [Theory]
    [InlineData("S26P01T03R2X-S", BarcodeRefusal.CheckCharacter)]
    [InlineData("S26P01T03R2-F", BarcodeRefusal.CheckCharacter)]
    [InlineData("S26P01T03R2C-X", BarcodeRefusal.Character)]
    [InlineData("S26P01T03R2C-S-F", BarcodeRefusal.Character)]
    [InlineData("S26P01T03R2C S", BarcodeRefusal.Character)]
    [InlineData("-S", BarcodeRefusal.Empty)]
    public void Read_WhenTheRestIsNoBarcode_Refuses(string scanned, BarcodeRefusal expected) =>
        Assert.Equal(expected, HalfCode.Read(scanned).Reading.Refusal);

    [Theory]
    [InlineData(null, "S26P01T03R2C")]
    [InlineData(TuberHalf.Sugar, "S26P01T03R2C-S")]
    [InlineData(TuberHalf.Fry, "S26P01T03R2C-F")]
    public void Write_OfABarcode_IsReadBack(TuberHalf? half, string expected)
    {
        Assert.Equal(expected, HalfCode.Write("S26P01T03R2C", half));
        Assert.Equal(half, HalfCode.Read(expected).Half);
    }
}
