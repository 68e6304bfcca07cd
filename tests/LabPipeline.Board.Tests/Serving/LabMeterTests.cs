using System.Net;
using System.Net.Http.Headers;
using LabPipeline.Board.Api;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Board.Tests.Serving;

/// <summary>What a monitoring program sees of the services behind the board.</summary>
[Collection(OnlyBoard.Name)]
public sealed class LabMeterTests
{
    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(80)]
    public async Task Metrics_WhenAServiceLives_TellItsSilenceTheQueuesAndTheRoomLeft()
    {
        await using var board = await RunningBoard.StartForNobodyAsync();
        var key = await new KeyDesk(board.Warehouse, new FixedTime(RunningBoard.Now)).MakeAsync("monitor", "test", Token);
        await board.Warehouse.WriteAsync(
            session => HeartbeatStore.BeatAsync(session, new Heartbeat { Service = "quality", StartedAt = RunningBoard.Now, BeatAt = RunningBoard.Now.AddSeconds(-30) }), Token);

        // Looked at when the board starts and every fifteen seconds.
        var end = DateTime.UtcNow.AddSeconds(60);
        string text;
        while (!(text = await MetricsAsync(board, key!)).Contains("service=\"quality\"", StringComparison.Ordinal) && DateTime.UtcNow < end)
        {
            await Task.Delay(500, Token);
        }

        Assert.Matches("labpipeline_service_silence_seconds{.*service=\"quality\".*} 30", text);
        Assert.Matches("labpipeline_outbox_waiting{.*} 0", text);
        Assert.Matches("labpipeline_messages_parked{.*} 0", text);
        Assert.Matches("labpipeline_data_free_bytes{.*} [1-9]", text);
    }

    private static async Task<string> MetricsAsync(RunningBoard board, string key)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/metrics");
        request.Headers.Authorization = new AuthenticationHeaderValue("Bearer", key);
        using var answer = await board.Client.SendAsync(request, Token);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync(Token);
    }
}
