using LabPipeline.Science.Barcodes;
using LabPipeline.Testing;
using ZXing;
using ZXing.Common;
using ZXing.OneD;

namespace LabPipeline.Science.Tests.Barcodes;

/// <summary>Our symbols against ZXing.Net: the modules it draws, the check symbol read back out of them, and what its reader makes of ours.</summary>
public sealed class Code128EncoderTests
{
    private const int ModulesOfSymbol = 11;
    private const int ModulesOfStop = 13;
    private const int QuietModules = 10;

    private static readonly string[] Examples =
        [.. ReferenceTable.Load("H_code128_examples.csv").Rows.Where(row => row.Text("encoder_mode") == "CODE128").Select(row => row.Text("text"))];

    private static readonly string[] Samples =
        [.. SampleBarcode.Series("26", "NT", 1).Take(40).Concat(SampleBarcode.Series("26", "XB2", 731, digits: 5).Take(40)).Select(barcode => barcode.Text)];

    public static TheoryData<string> ExampleTexts => [.. Examples];

    public static TheoryData<string> SampleTexts => [.. Samples];

    [Theory]
    [MemberData(nameof(ExampleTexts))]
    public void Modules_OnTheExamples_AreThoseTheOtherEncoderDraws(string text) => Assert.Equal(Draw(text), Code128.Encode(text).Modules);

    /// <summary>For "26NT..." it starts with the pair 26 in set C, we in set B as the standard's annex has it: as many symbols, so the set is stated.</summary>
    [Theory]
    [MemberData(nameof(SampleTexts))]
    public void Modules_OfSampleBarcodesInOneSet_AreThoseTheOtherEncoderDraws(string text)
    {
        Assert.Equal(Draw(text, Code128Set.B), Code128.Encode(text, Code128Set.B).Modules);
        Assert.Equal(Draw(text).Length, Code128.Encode(text).Modules.Length);
    }

    [Fact]
    public void Modules_InAStatedSet_AreThoseTheOtherEncoderDraws()
    {
        foreach (var row in ReferenceTable.Load("H_code128_examples.csv").Rows.Where(row => row.Text("encoder_mode") != "CODE128"))
        {
            var (text, set) = (row.Text("text"), (Code128Set)row.Text("encoder_mode")[^1]);

            Assert.Equal(Draw(text, set), Code128.Encode(text, set).Modules);
        }
    }

    [Theory]
    [MemberData(nameof(ExampleTexts))]
    [MemberData(nameof(SampleTexts))]
    public void Modules_WhenReadByAnotherReader_GiveTheText(string text)
    {
        var modules = Code128.Encode(text).Modules;
        var row = new BitArray(modules.Length + (2 * QuietModules));
        for (var position = 0; position < modules.Length; position++)
        {
            row[position + QuietModules] = modules[position] == '1';
        }

        Assert.Equal(text, new Code128Reader().decodeRow(0, row, null).Text);
    }

    [Theory]
    [MemberData(nameof(ExampleTexts))]
    [MemberData(nameof(SampleTexts))]
    public void CheckSymbol_WhenReadFromTheOthersDrawing_FitsTheWeightedSum(string text)
    {
        var values = Read(Draw(text));

        Assert.Equal((values[0] + Enumerable.Range(1, values.Count - 2).Sum(position => position * values[position])) % 103, values[^1]);
        var inSetB = Read(Draw(text, Code128Set.B));
        Assert.Equal(Code128.Encode(text, Code128Set.B).Check, inSetB[^1]);
    }

    private static string Draw(string text, Code128Set? set = null)
    {
        var hints = new Dictionary<EncodeHintType, object> { [EncodeHintType.MARGIN] = 0 };
        if (set is { } stated)
        {
            hints[EncodeHintType.FORCE_CODE_SET] = stated.ToString();
        }

        var drawn = new Code128Writer().encode(text, BarcodeFormat.CODE_128, 0, 1, hints);
        return string.Concat(Enumerable.Range(0, drawn.Width).Select(x => drawn[x, 0] ? '1' : '0'));
    }

    /// <summary>Symbol values with the check symbol, without stop.</summary>
    private static List<int> Read(string modules)
    {
        Assert.Equal(Code128Symbol.Modules(Code128Symbol.Stop), modules[^ModulesOfStop..]);
        var table = ReferenceTable.Load("H_code128_symbols.csv").Rows.ToDictionary(row => row.Text("modules"), row => row.Count("value"));
        return [.. modules[..^ModulesOfStop].Chunk(ModulesOfSymbol).Select(symbol => table[new string(symbol)])];
    }
}
