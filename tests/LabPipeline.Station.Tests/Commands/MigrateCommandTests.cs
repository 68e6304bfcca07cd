using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Schema;
using Spectre.Console.Testing;

namespace LabPipeline.Station.Tests.Commands;

public sealed class MigrateCommandTests
{
    [Fact]
    public async Task Migrate_OfAnEmptyFolder_MakesTheWarehouseAndSaysItsSchema()
    {
        using var folder = new ScratchFolder();
        using var console = new TestConsole();

        var exitCode = await StationApp.RunAsync(["migrate", "--data", folder.Path], console, TextWriter.Null);

        Assert.Equal(ExitCode.Done, exitCode);
        Assert.True(File.Exists(folder.File("warehouse.db")));
        Assert.Contains($"schema {Migrator.ScriptsOf(DialectName.Sqlite)[^1].Number}", console.Output, StringComparison.Ordinal);
    }
}
