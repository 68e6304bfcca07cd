using System.Net;
using LabPipeline.Board.Serving;
using LabPipeline.Testing;

namespace LabPipeline.Board.Tests.Serving;

public sealed class ServingTests
{
    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Health_WhenTheWarehouseIsNew_IsLiveAndReady()
    {
        await using var board = await RunningBoard.StartAsync();

        Assert.Equal("Healthy", await board.PageAsync("/health/live"));
        // No service has run on it yet: pages are served, and the answer says what is missing.
        var ready = await board.PageAsync("/health/ready");
        Assert.Contains("\"warehouse\":{\"status\":\"Healthy\"", ready, StringComparison.Ordinal);
        Assert.Contains("no service has left a sign of life", ready, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("delete from schema_version where number = 1")]
    [InlineData("update schema_version set checksum = 'other' where number = 1")]
    [InlineData("drop table schema_version")]
    public async Task Ready_WhenTheSchemaIsAnother_IsUnavailableThoughLive(string damage)
    {
        await using var board = await RunningBoard.StartAsync();
        await board.InsertAsync(damage);

        using var ready = await board.GetAsync("/health/ready");

        Assert.Equal(HttpStatusCode.ServiceUnavailable, ready.StatusCode);
        Assert.Equal("Healthy", await board.PageAsync("/health/live"));
    }

    [Theory]
    [Shows(71)]
    [InlineData("board.example")]
    [InlineData("127.0.0.1.board.example")]
    public async Task Request_UnderAnotherName_IsRefused(string host)
    {
        await using var board = await RunningBoard.StartAsync();

        using var answer = await board.GetAsync("/", host);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    // Header names and values: W3C Content Security Policy Level 3, Fetch Standard (nosniff), W3C Referrer Policy.
    [Theory]
    [Shows(72)]
    [InlineData("/", HttpStatusCode.OK)]
    [InlineData("/board.css", HttpStatusCode.OK)]
    [InlineData("/nothing-here", HttpStatusCode.NotFound)]
    public async Task Answer_WhateverItIs_CarriesTheHeadersThatKeepOthersOut(string address, HttpStatusCode status)
    {
        await using var board = await RunningBoard.StartAsync();

        using var answer = await board.GetAsync(address);

        Assert.Equal(status, answer.StatusCode);
        AssertHeaders(answer);
        Assert.Equal(address != "/board.css", answer.Headers.CacheControl!.NoStore);
    }

    // The second also takes away what says how far the warehouse has come.
    [Theory]
    [InlineData("alter table pull rename to gone")]
    [InlineData("alter table held_file rename to gone")]
    public async Task Page_WhenTheWarehouseCannotBeRead_SaysSoAndKeepsTheHeaders(string damage)
    {
        await using var board = await RunningBoard.StartAsync();
        await Season.FillAsync(board);
        await board.InsertAsync(damage);

        using var answer = await board.GetAsync("/");

        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        Assert.Contains("The warehouse could not be read.", await answer.Content.ReadAsStringAsync(Token), StringComparison.Ordinal);
        AssertHeaders(answer);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/alerts")]
    [InlineData("/arrivals")]
    [InlineData("/sample")]
    public async Task Page_WhenMade_HoldsNoInlineScriptAndNoInlineStyle(string address)
    {
        await using var board = await RunningBoard.StartAsync();
        await Season.FillAsync(board);

        using var answer = await board.GetAsync(address);
        var page = await answer.Content.ReadAsStringAsync(Token);

        Assert.DoesNotMatch("<script(?! type=\"module\" src=\"/[a-z]+.js\"></script>)", page);
        Assert.DoesNotContain(" style=", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotMatch(" on[a-z]+=", page);
    }

    // 192.0.2.7 is an address for documentation (RFC 5737); it is never asked for.
    [Theory]
    [InlineData("http://0.0.0.0:5080")]
    [InlineData("http://[::]:5080")]
    [InlineData("http://*:5080")]
    [InlineData("http://192.0.2.7:5080")]
    [InlineData("http://board.example:5080")]
    [InlineData("http://127.0.0.1.board.example:5080")]
    [InlineData("http://127.0.0.1:5080;http://0.0.0.0:5081")]
    [InlineData("https://127.0.0.1:5080")]
    [InlineData("5080")]
    public async Task Start_OnAnAddressThatLacksWhatTheNetworkNeeds_IsRefusedInOneLine(string url)
    {
        using var folder = new ScratchFolder();
        using var output = new StringWriter();
        using var errors = new StringWriter();

        var exit = await BoardHost.RunAsync(["--Lab:DataFolder", folder.Path, "--Board:Url", url], output, errors);

        Assert.Equal(1, exit);
        Assert.Empty(output.ToString());
        var line = Assert.Single(errors.ToString().Split(Environment.NewLine, StringSplitOptions.RemoveEmptyEntries));
        Assert.StartsWith("The board does not start. Board:", line, StringComparison.Ordinal);
        Assert.False(File.Exists(folder.File("warehouse.db")));
    }

    [Theory]
    [InlineData("http://127.0.0.1:5080")]
    [InlineData("http://127.7.7.7:80/")]
    [InlineData("http://[::1]:5080")]
    [InlineData("http://localhost:5080")]
    public void Url_OfThisComputer_IsAccepted(string url) =>
        Assert.True(new BoardOptionsValidator().Validate(null, new BoardOptions { Url = url }).Succeeded);

    [Fact]
    public async Task Start_WhenOtherSettingsNameAddresses_OpensItsOwnAlone()
    {
        await using var board = await RunningBoard.StartAsync(
            "--urls", "http://0.0.0.0:0", "--preferHostingUrls", "true", "--Kestrel:Endpoints:All:Url", "http://0.0.0.0:0");

        Assert.StartsWith("http://127.0.0.1:", Assert.Single(board.Urls), StringComparison.Ordinal);
    }

    private static void AssertHeaders(HttpResponseMessage answer)
    {
        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains("default-src 'self'", policy, StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.Equal(["nosniff"], answer.Headers.GetValues("X-Content-Type-Options"));
        Assert.Equal(["no-referrer"], answer.Headers.GetValues("Referrer-Policy"));
        Assert.True(answer.Headers.CacheControl!.NoStore || answer.Headers.CacheControl.NoCache);
        Assert.False(answer.Headers.Contains("Server"));
    }
}
