using System.Net;
using System.Net.Http.Json;
using LabPipeline.Board.People;

namespace LabPipeline.Board.Tests.Bench;

public sealed class BenchEntryTests : IAsyncLifetime
{
    private const string Profile =
        """
        {
          "schema": 1, "name": "peel", "version": 1, "kind": "bench",
          "instrument": { "constant": "peel scoring" },
          "method": { "name": "picture card", "version": "1" },
          "files": { "match": ["peel-score_*.csv"], "complete": "final-newline", "quietSeconds": 2 },
          "text": { "encoding": "utf-8", "layout": "delimited", "decimalMark": "point", "delimiter": ",", "quote": "\"", "headerLine": 1 },
          "identity": { "barcode": { "column": "sample" }, "run": { "column": "sheet" }, "operator": { "column": "judge" } },
          "time": { "columns": ["judged_at"], "formats": ["yyyy-MM-dd HH:mm"], "zone": "America/Chicago" },
          "quantities": [{ "quantity": "cleaned_surface", "column": "cleaned_pct", "unit": "%", "min": 0, "max": 100 }]
        }
        """;

    private static readonly Guid Id = new("0f8fad5b-d9cb-469f-a165-70867728950e");

    private RunningBoard _board = null!;

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    private string Drop => Path.Combine(_board.Folder, "drop", "bench");

    public async ValueTask InitializeAsync()
    {
        _board = await RunningBoard.StartForNobodyAsync();
        await _board.SignInAsync(RoleNames.Bench);
        Directory.CreateDirectory(Path.Combine(_board.Folder, "profiles", "bench"));
        await File.WriteAllTextAsync(Path.Combine(_board.Folder, "profiles", "bench", "peel.json"), Profile, Token);
    }

    public ValueTask DisposeAsync() => _board.DisposeAsync();

    [Fact]
    public async Task Entry_WhenSentTwice_IsOneWholeFileInTheTimeOfItsProfile()
    {
        using var first = await SendAsync(Entry("90"));
        using var second = await SendAsync(Entry("90"));

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (first.StatusCode, second.StatusCode));
        var file = Assert.Single(Directory.GetFiles(Drop));
        Assert.Equal("peel-score_2026-01-14_0f8fad5b.csv", Path.GetFileName(file));
        // 15:05 UTC is 09:05 in Chicago in January (UTC-6, IANA time zone database).
        Assert.Equal(
            $"sheet,sample,cleaned_pct,judge,judged_at\nPS260114-0f8fad5b,{Season.Measured},90,bench,2026-01-14 09:05\n", await File.ReadAllTextAsync(file, Token));
        Assert.Equal(["bench"], await _board.QueryAsync<string>("select who from change_log where what = 'bench sheet entered'"));
    }

    [Theory]
    [InlineData("120", "found '120'")]
    [InlineData("90;1", "found '90;1'")]
    [InlineData("=1+1", "Found '=1+1'")]
    public async Task Entry_ThatIntakeWouldRefuse_IsRefusedHereAndLeavesNoFile(string value, string said)
    {
        using var answer = await SendAsync(Entry(value));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(said, System.Text.RegularExpressions.Regex.Unescape(await answer.Content.ReadAsStringAsync(Token)), StringComparison.OrdinalIgnoreCase);
        Assert.False(Directory.Exists(Drop));
    }

    [Fact]
    public async Task Entry_OfAnotherPerson_WaitsForThatPerson()
    {
        using var answer = await SendAsync(Entry("90", by: "somebody.else"));

        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.False(Directory.Exists(Drop));
    }

    [Fact]
    public async Task Entry_WithoutTheFormsToken_IsRefused()
    {
        using var answer = await _board.Client.PostAsJsonAsync("/bench/entries", Entry("90"), Token);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.False(Directory.Exists(Drop));
    }

    private static object Entry(string value, string by = "bench") => new
    {
        id = Id,
        sheet = "peel",
        by,
        rows = new[] { new { at = "2026-01-14T15:05:30.000Z", cells = new Dictionary<string, string> { ["sample"] = Season.Measured, ["cleaned_pct"] = value } } },
    };

    private async Task<HttpResponseMessage> SendAsync(object entry)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/bench/entries") { Content = JsonContent.Create(entry) };
        request.Headers.Add("X-Board-Form", await _board.Client.GetStringAsync(new Uri("/bench/token", UriKind.Relative), Token));
        return await _board.Client.SendAsync(request, Token);
    }
}
