using PdfSharp.Fonts;

namespace LabPipeline.Reporting.Printing;

/// <summary>Gives the PDF library its fonts: it knows none by itself where there is no Windows. One pair a process, found at the first need.</summary>
public sealed class PrintFonts : IFontResolver
{
    /// <summary>The only family there is.</summary>
    internal const string Family = "print";

    private const string BoldFace = "print-bold";

    private static readonly Lock Gate = new();
    private static string? _folder;
    private static bool _isReady;

    private readonly byte[] _regular;
    private readonly byte[] _bold;

    private PrintFonts(FontPair fonts) => (_regular, _bold) = (File.ReadAllBytes(fonts.Regular), File.ReadAllBytes(fonts.Bold));

    /// <summary>Names a folder with fonts to be used instead of the computer's own; only before anything was printed.</summary>
    public static void Use(string? folder) => _folder = folder;

    /// <exception cref="PrintException">No known font is there.</exception>
    internal static void Ensure()
    {
        lock (Gate)
        {
            if (!_isReady)
            {
                GlobalFontSettings.FontResolver = new PrintFonts(FontSearch.Find(_folder is null ? FontSearch.UsualFolders() : [_folder]));
                _isReady = true;
            }
        }
    }

    public FontResolverInfo ResolveTypeface(string familyName, bool bold, bool italic) => new(bold ? BoldFace : Family);

    public byte[] GetFont(string faceName) => faceName == BoldFace ? _bold : _regular;
}
