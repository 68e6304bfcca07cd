using System.Text;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Text;

namespace LabPipeline.Intake.Folders;

/// <summary>Looks at the last bytes of a file for the end its profile promises.</summary>
public static class FileEnding
{
    private const int Longest = 8192;

    public static bool IsAsPromised(string path, Profile profile)
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        var encoding = EncodingOf(profile.Text.Encoding, stream);
        var length = (int)Math.Min(Longest, stream.Length);
        stream.Seek(-length, SeekOrigin.End);
        var bytes = new byte[length];
        stream.ReadExactly(bytes);
        var text = encoding.GetString(bytes);
        return text.Length > 0 && (profile.Files.Complete == Completeness.Trailer ? EndsWithTrailer(text, profile) : text[^1] is '\n' or '\r');
    }

    private static bool EndsWithTrailer(string text, Profile profile)
    {
        var body = text.TrimEnd('\r', '\n');
        var start = body.LastIndexOfAny(['\r', '\n']) + 1;
        return body.AsSpan(start).StartsWith(profile.Files.TrailerText, StringComparison.Ordinal);
    }

    // Only line ends and the trailer are looked for here; whether the text is well formed is the reader's business.
    private static Encoding EncodingOf(TextEncoding declared, FileStream stream) => declared switch
    {
        TextEncoding.Utf8 => Encoding.UTF8,
        TextEncoding.Utf16LittleEndian => Encoding.Unicode,
        TextEncoding.Utf16BigEndian => Encoding.BigEndianUnicode,
        TextEncoding.Utf16 => stream.ReadByte() == 0xFE ? Encoding.BigEndianUnicode : Encoding.Unicode,
        _ => Encoding.Latin1,
    };
}
