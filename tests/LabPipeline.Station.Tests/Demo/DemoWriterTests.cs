using LabPipeline.Hosting;
using LabPipeline.Station.Demo;
using LabPipeline.Testing;

namespace LabPipeline.Station.Tests.Demo;

public sealed class DemoWriterTests : IDisposable
{
    private readonly ScratchFolder _folder = new();
    private readonly DemoScenario _scenario = DemoScenario.Create();

    private LabOptions Lab => new() { DataFolder = _folder.Path };

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Write_IntoAnEmptyFolder_PutsEverythingInItsPlace()
    {
        var writer = new DemoWriter(Lab);

        Assert.False(writer.IsReady);
        Assert.Equal(DemoSetUp.Written, writer.Write(_scenario));

        Assert.True(writer.IsReady);
        foreach (var file in _scenario.Files)
        {
            var path = Path.Combine(Lab.DropFolder, file.Kind, file.Name);
            Assert.Equal(file.Bytes.ToArray(), File.ReadAllBytes(path));
            Assert.Equal(file.WrittenAt.UtcDateTime, File.GetLastWriteTimeUtc(path));
        }

        Assert.Equal(9, Directory.GetFiles(Lab.ProfileFolder, "*.json", SearchOption.AllDirectories).Length);
        Assert.Equal(2, Directory.GetFiles(_folder.File("plans")).Length);
        Assert.Equal(6, Directory.GetFiles(_folder.File("corrections"), "*", SearchOption.AllDirectories).Length);
        Assert.False(Directory.Exists(_folder.File("demo-set-up")));
    }

    [Fact]
    public void Write_WhenASetUpIsFinished_KeepsIt()
    {
        new DemoWriter(Lab).Write(_scenario);
        var profile = Path.Combine(Lab.ProfileFolder, "sugar", "analyser-a.json");
        File.WriteAllText(profile, "changed by the laboratory");

        Assert.Equal(DemoSetUp.Kept, new DemoWriter(Lab).Write(_scenario));
        Assert.Equal("changed by the laboratory", File.ReadAllText(profile));
    }

    [Fact]
    public void Write_WhenTheFolderHoldsAnotherSeason_RefusesToMixThem()
    {
        new DemoWriter(Lab).Write(_scenario);

        var refusal = Assert.Throws<InvalidOperationException>(() => new DemoWriter(Lab).Write(DemoScenario.Create(clean: true)));

        Assert.Contains("holds another season", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_WhenASetUpWasInterrupted_StartsOver()
    {
        new DemoWriter(Lab).Write(_scenario);
        File.Delete(_folder.File(DemoWriter.Marker));
        File.Delete(Path.Combine(Lab.DropFolder, _scenario.Files[^1].Kind, _scenario.Files[^1].Name));
        Directory.CreateDirectory(_folder.File("demo-set-up"));
        File.WriteAllText(_folder.File("demo-set-up/half.csv"), "half");

        Assert.Equal(DemoSetUp.Written, new DemoWriter(Lab).Write(_scenario));

        Assert.Equal(_scenario.Files.Count, Directory.GetFiles(Lab.DropFolder, "*", SearchOption.AllDirectories).Length);
        Assert.False(Directory.Exists(_folder.File("demo-set-up")));
    }
}
