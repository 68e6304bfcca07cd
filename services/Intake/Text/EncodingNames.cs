namespace LabPipeline.Intake.Text;

/// <summary>The names profiles use for encodings.</summary>
public static class EncodingNames
{
    private static readonly Dictionary<string, TextEncoding> ByName = new(StringComparer.Ordinal)
    {
        ["utf-8"] = TextEncoding.Utf8,
        ["utf-16"] = TextEncoding.Utf16,
        ["utf-16le"] = TextEncoding.Utf16LittleEndian,
        ["utf-16be"] = TextEncoding.Utf16BigEndian,
        ["iso-8859-1"] = TextEncoding.Latin1,
        ["windows-1252"] = TextEncoding.Windows1252,
    };

    public static IReadOnlyCollection<string> All => ByName.Keys;

    public static TextEncoding? Find(string name) => ByName.TryGetValue(name, out var encoding) ? encoding : null;

    public static string NameOf(TextEncoding encoding) => ByName.First(pair => pair.Value == encoding).Key;
}
