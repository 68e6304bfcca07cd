using System.Diagnostics;
using System.Globalization;
using LabPipeline.Testing;

namespace LabPipeline.Reporting.Tests.Labels;

/// <summary>A page of a PDF as a printer of so many dots an inch would see it, made by pdftoppm (poppler), which knows nothing of this program.</summary>
internal sealed record PdfRaster(int Width, int Height, byte[] Grey, int Dpi)
{
    private const string Tool = "pdftoppm";

    public static void SkipWithoutTool() => Assert.SkipUnless(
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, Tool)) || File.Exists(Path.Combine(folder, Tool + ".exe"))),
        $"{Tool} is not on this machine (Debian package poppler-utils): labels cannot be read back from the printed page.");

    public static async Task<PdfRaster> OfAsync(byte[] pdf, int page, int dpi)
    {
        using var folder = new ScratchFolder();
        await File.WriteAllBytesAsync(folder.File("labels.pdf"), pdf, TestContext.Current.CancellationToken);
        var start = new ProcessStartInfo(Tool) { WorkingDirectory = folder.Path };
        foreach (var argument in (string[])["-gray", "-r", dpi.ToString(CultureInfo.InvariantCulture), "-f", $"{page}", "-l", $"{page}", "-singlefile", "labels.pdf", "page"])
        {
            start.ArgumentList.Add(argument);
        }

        using var process = Process.Start(start)!;
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(0, process.ExitCode);
        return Parse(await File.ReadAllBytesAsync(folder.File("page.pgm"), TestContext.Current.CancellationToken), dpi);
    }

    /// <summary>The part of the page at a place in millimetres.</summary>
    public PdfRaster Cut(double left, double top, double width, double height)
    {
        var (x, y) = (Dots(left), Dots(top));
        var (across, down) = (Math.Min(Dots(width), Width - x), Math.Min(Dots(height), Height - y));
        var cut = new byte[across * down];
        for (var row = 0; row < down; row++)
        {
            Array.Copy(Grey, ((y + row) * Width) + x, cut, row * across, across);
        }

        return new PdfRaster(across, down, cut, Dpi);
    }

    private int Dots(double millimetres) => (int)Math.Round(millimetres / 25.4 * Dpi);

    /// <summary>Portable grey map, binary form: "P5", width, height, 255, then one byte a dot.</summary>
    private static PdfRaster Parse(byte[] file, int dpi)
    {
        var (at, fields) = (0, new List<string>());
        while (fields.Count < 4)
        {
            var end = Array.FindIndex(file, at, value => char.IsWhiteSpace((char)value));
            fields.Add(System.Text.Encoding.ASCII.GetString(file, at, end - at));
            at = end + 1;
        }

        Assert.Equal(("P5", "255"), (fields[0], fields[3]));
        return new PdfRaster(int.Parse(fields[1], CultureInfo.InvariantCulture), int.Parse(fields[2], CultureInfo.InvariantCulture), file[at..], dpi);
    }
}
