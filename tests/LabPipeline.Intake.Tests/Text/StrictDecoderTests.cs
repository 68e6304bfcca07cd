using System.Text;
using LabPipeline.Intake.Text;

namespace LabPipeline.Intake.Tests.Text;

/// <summary>Bytes from the definitions of the encodings: Unicode 15 chapter 3.9, ISO/IEC 8859-1, and the WHATWG index of windows-1252.</summary>
public sealed class StrictDecoderTests
{
    private const string Mixed = "µ 5,4 °C é – \u0394E*ab 🥔\n";

    private static readonly byte[] Utf8Mark = [0xEF, 0xBB, 0xBF];
    private static readonly byte[] LittleMark = [0xFF, 0xFE];
    private static readonly byte[] BigMark = [0xFE, 0xFF];

    [Fact]
    public void Read_WhenEncodingIsAsDeclared_GivesTheTextInChunksOfAnySize()
    {
        (TextEncoding Declared, byte[] Bytes)[] files =
        [
            (TextEncoding.Utf8, Encoding.UTF8.GetBytes(Mixed)),
            (TextEncoding.Utf8, [.. Utf8Mark, .. Encoding.UTF8.GetBytes(Mixed)]),
            (TextEncoding.Utf16LittleEndian, Encoding.Unicode.GetBytes(Mixed)),
            (TextEncoding.Utf16LittleEndian, [.. LittleMark, .. Encoding.Unicode.GetBytes(Mixed)]),
            (TextEncoding.Utf16BigEndian, Encoding.BigEndianUnicode.GetBytes(Mixed)),
            (TextEncoding.Utf16BigEndian, [.. BigMark, .. Encoding.BigEndianUnicode.GetBytes(Mixed)]),
            (TextEncoding.Utf16, [.. LittleMark, .. Encoding.Unicode.GetBytes(Mixed)]),
            (TextEncoding.Utf16, [.. BigMark, .. Encoding.BigEndianUnicode.GetBytes(Mixed)]),
        ];
        foreach (var (declared, bytes) in files)
        {
            for (var chunk = 1; chunk <= 7; chunk++)
            {
                Assert.Equal((Mixed, DecodeProblem.None, 0L), Decode(bytes, declared, chunk));
            }
        }
    }

    [Fact]
    public void Read_WhenLatin1_GivesTheSameCodes()
    {
        byte[] bytes = [0xB5, 0x20, 0xB0, 0x43, 0xE9, 0xFF];

        Assert.Equal(("µ °Céÿ", DecodeProblem.None, 0L), Decode(bytes, TextEncoding.Latin1));
    }

    // The full upper half against the platform's own code page table.
    [Fact]
    public void Read_WhenWindows1252_AgreesWithTheCodePage()
    {
        var codePage = CodePagesEncodingProvider.Instance.GetEncoding(1252, EncoderFallback.ExceptionFallback, DecoderFallback.ExceptionFallback)!;
        foreach (var code in Enumerable.Range(0x20, 0xE0).Except([0x81, 0x8D, 0x8F, 0x90, 0x9D]))
        {
            Assert.Equal((codePage.GetString([(byte)code]), DecodeProblem.None, 0L), Decode([(byte)code], TextEncoding.Windows1252));
        }
    }

    [Theory]
    [Shows(21)]
    [InlineData(TextEncoding.Windows1252, new byte[] { 0x41, 0x81 }, 1)]
    [InlineData(TextEncoding.Latin1, new byte[] { 0x41, 0x42, 0x96 }, 2)]
    [InlineData(TextEncoding.Utf8, new byte[] { 0x41, 0xB5, 0x42 }, 1)]
    [InlineData(TextEncoding.Utf8, new byte[] { 0xC0, 0x80 }, 0)]
    [InlineData(TextEncoding.Utf8, new byte[] { 0x41, 0xED, 0xA0, 0x80 }, 1)]
    [InlineData(TextEncoding.Utf8, new byte[] { 0xF4, 0x90, 0x80, 0x80 }, 0)]
    [InlineData(TextEncoding.Utf8, new byte[] { 0xC2, 0xB5, 0xE2, 0x41 }, 2)]
    [InlineData(TextEncoding.Utf16LittleEndian, new byte[] { 0x41, 0x00, 0x00, 0xDC }, 2)]
    [InlineData(TextEncoding.Utf16LittleEndian, new byte[] { 0x41, 0x00, 0x3E, 0xD8, 0x41, 0x00 }, 2)]
    [InlineData(TextEncoding.Utf16BigEndian, new byte[] { 0xDC, 0x00 }, 0)]
    public void Read_WhenBytesAreWrong_StopsAtTheirOffset(TextEncoding declared, byte[] bytes, long offset)
    {
        for (var chunk = 1; chunk <= 4; chunk++)
        {
            var (_, problem, at) = Decode(bytes, declared, chunk);

            Assert.Equal((DecodeProblem.InvalidBytes, offset), (problem, at));
        }
    }

    [Theory]
    [InlineData(TextEncoding.Utf8, new byte[] { 0x41, 0xF0, 0x9F, 0xA5 }, 1)]
    [InlineData(TextEncoding.Utf8, new byte[] { 0xC2 }, 0)]
    [InlineData(TextEncoding.Utf16LittleEndian, new byte[] { 0x41, 0x00, 0x42 }, 2)]
    [InlineData(TextEncoding.Utf16LittleEndian, new byte[] { 0x41, 0x00, 0x3E, 0xD8 }, 2)]
    public void Read_WhenFileEndsInsideACharacter_SaysSo(TextEncoding declared, byte[] bytes, long offset)
    {
        var (_, problem, at) = Decode(bytes, declared);

        Assert.Equal((DecodeProblem.CutCharacter, offset), (problem, at));
    }

    [Theory]
    [Shows(21)]
    [InlineData(TextEncoding.Utf8, new byte[] { 0xC2, 0xB5, 0x00, 0x41 }, 2)]
    [InlineData(TextEncoding.Latin1, new byte[] { 0xB5, 0x00 }, 1)]
    [InlineData(TextEncoding.Utf16LittleEndian, new byte[] { 0x41, 0x00, 0x00, 0x00 }, 2)]
    public void Read_WhenNullCharacter_StopsAtItsOffset(TextEncoding declared, byte[] bytes, long offset)
    {
        var (text, problem, at) = Decode(bytes, declared);

        Assert.Equal((DecodeProblem.NullCharacter, offset), (problem, at));
        Assert.DoesNotContain('\0', text);
    }

    [Fact]
    public void Read_WhenUtf16HasNoMarkAndUtf8IsDeclared_FindsTheNull() =>
        Assert.Equal(("A", DecodeProblem.NullCharacter, 1L), Decode(Encoding.Unicode.GetBytes("A1"), TextEncoding.Utf8));

    [Fact]
    public void Read_WhenFileHoldsAReplacementCharacter_RefusesIt() =>
        Assert.Equal(("5 ", DecodeProblem.ReplacementCharacter, 2L), Decode(Encoding.UTF8.GetBytes("5 \uFFFDC"), TextEncoding.Utf8));

    [Fact]
    [Shows(21)]
    public void Read_WhenMarkContradicts_RefusesBeforeAnyText()
    {
        (TextEncoding Declared, byte[] Mark)[] contradictions =
        [
            (TextEncoding.Utf8, LittleMark), (TextEncoding.Utf8, BigMark),
            (TextEncoding.Utf16LittleEndian, BigMark), (TextEncoding.Utf16LittleEndian, Utf8Mark),
            (TextEncoding.Utf16BigEndian, LittleMark), (TextEncoding.Utf16BigEndian, Utf8Mark), (TextEncoding.Utf16, Utf8Mark),
            (TextEncoding.Latin1, Utf8Mark), (TextEncoding.Latin1, LittleMark), (TextEncoding.Latin1, BigMark),
            (TextEncoding.Windows1252, Utf8Mark), (TextEncoding.Windows1252, LittleMark), (TextEncoding.Windows1252, BigMark),
        ];
        foreach (var (declared, mark) in contradictions)
        {
            Assert.Equal(("", DecodeProblem.MarkContradictsEncoding, 0L), Decode([.. mark, 0x41, 0x00], declared));
        }
    }

    [Fact]
    public void Read_WhenUtf16HasNeitherMarkNorOrder_Refuses() =>
        Assert.Equal(("", DecodeProblem.MarkMissing, 0L), Decode(Encoding.Unicode.GetBytes("A"), TextEncoding.Utf16));

    [Fact]
    public void Read_WhenFileIsLongerThanAnyBuffer_LosesNothing()
    {
        var text = string.Concat(Enumerable.Repeat(Mixed, 20_000));

        foreach (var (declared, encoding) in new[]
        {
            (TextEncoding.Utf8, Encoding.UTF8), (TextEncoding.Utf16LittleEndian, Encoding.Unicode), (TextEncoding.Utf16BigEndian, Encoding.BigEndianUnicode),
        })
        {
            Assert.Equal((text, DecodeProblem.None, 0L), Decode(encoding.GetBytes(text), declared, 4093));
        }
    }

    private static (string Text, DecodeProblem Problem, long Offset) Decode(byte[] bytes, TextEncoding declared, int chunk = int.MaxValue)
    {
        using var stream = new TricklingStream(bytes, chunk);
        using var decoder = new StrictDecoder(stream, declared);
        var text = new StringBuilder();
        var target = new char[64];
        for (var count = decoder.Read(target); count > 0; count = decoder.Read(target))
        {
            text.Append(target, 0, count);
        }

        return (text.ToString(), decoder.Problem, decoder.ProblemOffset);
    }
}
