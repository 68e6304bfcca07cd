using LabPipeline.Hosting.Tests.Bus;
using LabPipeline.Testing;
using Microsoft.Data.Sqlite;

namespace LabPipeline.Hosting.Tests;

/// <summary>What keeps a service from doing what it was started for is one line for the person who started it.</summary>
public sealed class ServiceProcessTests
{
    [Fact]
    public async Task Run_WhenASettingIsWrong_EndsWithOneLineAndMakesNothing()
    {
        using var folder = new ScratchFolder();

        var (code, output, errors) = await RunAsync("--Lab:DataFolder", folder.File("data"), "--Lab:Bus", "pigeons");

        Assert.Equal((1, ""), (code, output));
        Assert.Equal("quality does not start. Lab:Bus is 'pigeons'; expected in-process or rabbitmq.", errors.Trim());
        Assert.False(Directory.Exists(folder.File("data")));
    }

    [Fact]
    public async Task Health_WhenThereIsNoWarehouseToAsk_SaysThatItCannotTell()
    {
        using var folder = new ScratchFolder();

        var (code, output, errors) = await RunAsync("health", "--Lab:DataFolder", folder.Path);

        Assert.Equal((1, ""), (code, output));
        Assert.StartsWith("quality cannot say whether it lives. ", errors, StringComparison.Ordinal);
        Assert.Single(errors.Trim().Split('\n'));
        SqliteConnection.ClearAllPools();
    }

    private static async Task<(int Code, string Output, string Errors)> RunAsync(params string[] args)
    {
        using var output = new StringWriter();
        using var errors = new StringWriter();
        var code = await ServiceProcess.RunAsync(args, new NotingModule(new Handling()), output, errors);
        return (code, output.ToString(), errors.ToString());
    }
}
