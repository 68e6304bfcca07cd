using LabPipeline.Reporting.Printing;
using LabPipeline.Testing;

namespace LabPipeline.Reporting.Tests.Printing;

public sealed class FontSearchTests
{
    [Fact]
    public void Find_WhereNoFontIs_SaysWhatToInstall()
    {
        using var folder = new ScratchFolder();

        var message = Assert.Throws<PrintException>(() => FontSearch.Find([folder.Path])).Message;

        Assert.Contains(folder.Path, message, StringComparison.Ordinal);
        Assert.Contains("fonts-dejavu-core", message, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_WhereAPairIs_TakesItInTheOrderOfCoverage()
    {
        using var folder = new ScratchFolder();
        Directory.CreateDirectory(folder.File("truetype"));
        foreach (var name in (string[])["arial.ttf", "arialbd.ttf", "LiberationSans-Regular.ttf", "LiberationSans-Bold.ttf", "DejaVuSans.ttf"])
        {
            File.WriteAllText(Path.Combine(folder.Path, "truetype", name), "");
        }

        Assert.EndsWith("LiberationSans-Bold.ttf", FontSearch.Find([folder.Path]).Bold, StringComparison.Ordinal);
    }
}
