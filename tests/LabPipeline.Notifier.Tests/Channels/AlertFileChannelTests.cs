using System.Text.Json;
using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Tests.Doubles;
using LabPipeline.Testing;

namespace LabPipeline.Notifier.Tests.Channels;

public sealed class AlertFileChannelTests : IDisposable
{
    private readonly ScratchFolder _folder = new();

    private string Path => _folder.File("alerts.jsonl");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Send_WhenAlertsCome_WritesOneObjectALine()
    {
        await SendAsync();
        await SendAsync();

        var lines = await File.ReadAllLinesAsync(Path, TestContext.Current.CancellationToken);
        Assert.Equal(2, lines.Length);
        using var json = JsonDocument.Parse(lines[1]);
        Assert.Equal("alert.raised", json.RootElement.GetProperty("type").GetString());
        Assert.Equal("2026-01-14T09:00:00.000Z", json.RootElement.GetProperty("timestamp").GetString());
        var data = json.RootElement.GetProperty("data");
        Assert.Equal(Samples.Alert.Id, data.GetProperty("id").GetString());
        Assert.Equal(17, data.GetProperty("alert").GetInt32());
        Assert.Equal("hold", data.GetProperty("level").GetString());
        Assert.Equal("duplicate-disagreement", data.GetProperty("rule").GetString());
        Assert.Equal("0.012", data.GetProperty("facts")[2].GetProperty("value").GetString());
    }

    [Fact]
    public async Task Send_WhenACrashLeftHalfALine_StartsANewOne()
    {
        await File.WriteAllTextAsync(Path, "{\"type\":\"alert.rai", TestContext.Current.CancellationToken);

        await SendAsync();

        var lines = await File.ReadAllLinesAsync(Path, TestContext.Current.CancellationToken);
        Assert.Equal("{\"type\":\"alert.rai", lines[0]);
        using var json = JsonDocument.Parse(lines[1]);
        Assert.Equal(Samples.Alert.Id, json.RootElement.GetProperty("data").GetProperty("id").GetString());
    }

    [Fact]
    public async Task Send_WhenTheFileCannotBeOpened_Throws()
    {
        Directory.CreateDirectory(Path);

        await Assert.ThrowsAsync<UnauthorizedAccessException>(SendAsync);
    }

    private Task SendAsync() => new AlertFileChannel(RecordingChannel.PolicyOf(AlertFileChannel.Name), Path)
        .SendAsync([Samples.Alert], TestContext.Current.CancellationToken);
}
