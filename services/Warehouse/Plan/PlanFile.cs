using System.Text;

namespace LabPipeline.Warehouse.Plan;

/// <summary>Reads a plan document, and the plots file beside it, from a folder.</summary>
public static class PlanFile
{
    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    public static PlanResult Read(string path)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        try
        {
            return PlanDocument.Parse(TextOf(path), Path.GetFileName(path), name => ReadBeside(Path.Combine(folder, name)));
        }
        catch (DecoderFallbackException)
        {
            return new PlanResult(null, [new PlanFault("document", "bytes that are not UTF-8", "UTF-8 text, in the plots file too", "Save it as UTF-8.")]);
        }
    }

    private static string? ReadBeside(string path) => File.Exists(path) ? TextOf(path) : null;

    private static string TextOf(string path) => StrictUtf8.GetString(File.ReadAllBytes(path)).TrimStart('\uFEFF');
}
