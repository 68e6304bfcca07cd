using System.Buffers;
using System.Buffers.Binary;
using System.Text;
using System.Text.Unicode;

namespace LabPipeline.Intake.Text;

/// <summary>The character codes themselves: bytes to UTF-16, each with the exact place where it fails.</summary>
internal static class CharacterCodes
{
    // Windows-1252 bytes 80 to 9F (WHATWG Encoding index "windows-1252", five bytes left undefined as in the original code page).
    private const string Windows1252Upper =
        "\u20AC\0\u201A\u0192\u201E\u2026\u2020\u2021\u02C6\u2030\u0160\u2039\u0152\0\u017D\0\0\u2018\u2019\u201C\u201D\u2022\u2013\u2014\u02DC\u2122\u0161\u203A\u0153\0\u017E\u0178";

    public static DecodeProblem Decode(TextEncoding encoding, ReadOnlySpan<byte> bytes, Span<char> target, bool last, out int read, out int written)
    {
        switch (encoding)
        {
            case TextEncoding.Utf8:
                return DecodeUtf8(bytes, target, last, out read, out written);
            case TextEncoding.Latin1:
            case TextEncoding.Windows1252:
                return DecodeSingleBytes(encoding, bytes, target, out read, out written);
            default:
                return DecodeUtf16(encoding == TextEncoding.Utf16BigEndian, bytes, target, last, out read, out written);
        }
    }

    public static int ByteCount(TextEncoding encoding, ReadOnlySpan<char> text) => encoding switch
    {
        TextEncoding.Utf8 => Encoding.UTF8.GetByteCount(text),
        TextEncoding.Latin1 or TextEncoding.Windows1252 => text.Length,
        _ => text.Length * 2,
    };

    private static DecodeProblem DecodeUtf8(ReadOnlySpan<byte> bytes, Span<char> target, bool last, out int read, out int written)
    {
        var status = Utf8.ToUtf16(bytes, target, out read, out written, replaceInvalidSequences: false, isFinalBlock: last);
        if (status != OperationStatus.InvalidData)
        {
            return DecodeProblem.None;
        }

        // The last bytes may be the beginning of a good character: cut, not wrong.
        var rest = bytes[read..];
        return last && rest.Length < 4 && Rune.DecodeFromUtf8(rest, out _, out _) == OperationStatus.NeedMoreData
            ? DecodeProblem.CutCharacter
            : DecodeProblem.InvalidBytes;
    }

    private static DecodeProblem DecodeSingleBytes(TextEncoding encoding, ReadOnlySpan<byte> bytes, Span<char> target, out int read, out int written)
    {
        var count = Math.Min(bytes.Length, target.Length);
        for (var index = 0; index < count; index++)
        {
            var code = (char)bytes[index];
            if (code is >= '\u0080' and <= '\u009F')
            {
                code = encoding == TextEncoding.Windows1252 ? Windows1252Upper[code - '\u0080'] : '\0';
                if (code == '\0')
                {
                    read = written = index;
                    return DecodeProblem.InvalidBytes;
                }
            }

            target[index] = code;
        }

        read = written = count;
        return DecodeProblem.None;
    }

    private static DecodeProblem DecodeUtf16(bool bigEndian, ReadOnlySpan<byte> bytes, Span<char> target, bool last, out int read, out int written)
    {
        read = written = 0;
        var count = Math.Min(bytes.Length / 2, target.Length);
        while (written < count)
        {
            var unit = UnitAt(bigEndian, bytes, written);
            if (char.IsHighSurrogate(unit))
            {
                if (written + 1 >= count)
                {
                    break;
                }

                if (!char.IsLowSurrogate(UnitAt(bigEndian, bytes, written + 1)))
                {
                    return DecodeProblem.InvalidBytes;
                }

                target[written++] = unit;
                unit = UnitAt(bigEndian, bytes, written);
            }
            else if (char.IsLowSurrogate(unit))
            {
                return DecodeProblem.InvalidBytes;
            }

            target[written++] = unit;
            read = written * 2;
        }

        // What is left is less than one character; at the end of the stream it will never become one.
        return last && read < bytes.Length && written < target.Length - 1 ? DecodeProblem.CutCharacter : DecodeProblem.None;
    }

    private static char UnitAt(bool bigEndian, ReadOnlySpan<byte> bytes, int index) => (char)(bigEndian
        ? BinaryPrimitives.ReadUInt16BigEndian(bytes[(index * 2)..])
        : BinaryPrimitives.ReadUInt16LittleEndian(bytes[(index * 2)..]));
}
