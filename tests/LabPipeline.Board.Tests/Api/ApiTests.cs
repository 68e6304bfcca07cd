using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using LabPipeline.Board.Api;

namespace LabPipeline.Board.Tests.Api;

public sealed class ApiTests : IAsyncLifetime
{
    private RunningBoard _board = null!;
    private string _key = "";

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _board = await RunningBoard.StartForNobodyAsync();
        await Season.FillAsync(_board);
        _key = (await new KeyDesk(_board.Warehouse, new FixedTime(RunningBoard.Now)).MakeAsync("notebook", "test", Token))!;
    }

    public ValueTask DisposeAsync() => _board.DisposeAsync();

    [Fact]
    public async Task Results_AsJson_CarryPlanValueAndPaging()
    {
        using var page = JsonDocument.Parse(await TextAsync("/api/v1/results?trial=NT26"));

        Assert.Equal((1, 1, 100), (Number(page, "total"), Number(page, "page"), Number(page, "size")));
        var item = page.RootElement.GetProperty("items")[0];
        Assert.Equal((Season.Measured, "glucose", 0.0625m, "101", "2026-01-12"), (
            item.GetProperty("barcode").GetString(), item.GetProperty("quantity").GetString(), item.GetProperty("value").GetDecimal(),
            item.GetProperty("plot").GetString(), item.GetProperty("pull_due_on").GetString()));
    }

    // RFC 4180: lines end with CR LF, a field with a comma or a quote stands in quotes, a quote is doubled.
    [Fact]
    public async Task Alerts_AsCsv_AreQuotedAsTheStandardSays()
    {
        await Season.AddAlertAsync(_board, 1, "hold", "late pull", "One, \"two\".");

        var text = await TextAsync("/api/v1/alerts?format=csv&state=open");

        Assert.StartsWith("number,rule_name,level,state,trial,pull,barcode,headline,", text, StringComparison.Ordinal);
        Assert.Contains("\r\n1,late pull,hold,open,NT26,2,,\"One, \"\"two\"\".\",Extract once more.,{},2026-01-14T14:01:00.000Z,", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/api/v1/results?size=0", "size")]
    [InlineData("/api/v1/results?size=1001", "size")]
    [InlineData("/api/v1/alerts?page=0", "page")]
    [InlineData("/api/v1/arrivals?format=xml", "format")]
    public async Task Question_ThatIsWrong_IsAnsweredWithWhatWasExpected(string address, string parameter)
    {
        using var answer = await AskAsync(address, _key);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains($"\"{parameter}\":[\"Found", await answer.Content.ReadAsStringAsync(Token), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/api/v1/results")]
    [InlineData("/api/v1/openapi.json")]
    [InlineData("/metrics")]
    public async Task Interface_WithoutAKeyInForce_IsClosed(string address)
    {
        using var none = await AskAsync(address, null);
        using var wrong = await AskAsync(address, KeyDesk.Prefix + "0000");

        Assert.Equal((HttpStatusCode.Unauthorized, HttpStatusCode.Unauthorized), (none.StatusCode, wrong.StatusCode));
    }

    [Fact]
    public async Task Key_WhenEnded_OpensNothingAndIsKeptAsAHashOnly()
    {
        var keys = new KeyDesk(_board.Warehouse, new FixedTime(RunningBoard.Now));
        Assert.Null(await keys.MakeAsync("notebook", "test", Token));
        Assert.Empty(await _board.QueryAsync<string>($"select name from board_key where key_hash like '%{_key}%' or name like '%{_key}%'"));

        Assert.True(await keys.EndAsync("notebook", "test", Token));

        using var answer = await AskAsync("/api/v1/results", _key);
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    [Fact]
    public async Task Description_OfTheInterface_NamesEveryList()
    {
        using var document = JsonDocument.Parse(await TextAsync("/api/v1/openapi.json"));

        Assert.StartsWith("3.", document.RootElement.GetProperty("openapi").GetString(), StringComparison.Ordinal);
        Assert.Equal(["/api/v1/alerts", "/api/v1/arrivals", "/api/v1/results"], document.RootElement.GetProperty("paths").EnumerateObject().Select(path => path.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Metrics_WhenRead_CountRequests()
    {
        await TextAsync("/api/v1/results");

        Assert.Contains("http_server_request_duration_seconds_count", await TextAsync("/metrics"), StringComparison.Ordinal);
    }

    private static int Number(JsonDocument page, string name) => page.RootElement.GetProperty(name).GetInt32();

    private async Task<string> TextAsync(string address)
    {
        using var answer = await AskAsync(address, _key);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync(Token);
    }

    private Task<HttpResponseMessage> AskAsync(string address, string? key)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, address);
        request.Headers.Authorization = key is null ? null : new AuthenticationHeaderValue("Bearer", key);
        return _board.Client.SendAsync(request, Token);
    }
}
