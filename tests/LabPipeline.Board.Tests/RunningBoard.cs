using System.Net;
using Dapper;
using LabPipeline.Board.Serving;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using Microsoft.AspNetCore.Builder;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;

namespace LabPipeline.Board.Tests;

/// <summary>The board as it is started, on a free port of this computer and over a warehouse of its own.</summary>
internal sealed class RunningBoard : IAsyncDisposable
{
    public static readonly DateTimeOffset Now = new(2026, 1, 14, 15, 30, 0, TimeSpan.Zero);

    private readonly ScratchFolder _folder = new();
    private readonly HttpClient _client = new(new SocketsHttpHandler { UseProxy = false, AllowAutoRedirect = false });
    private readonly WebApplication _app;

    private RunningBoard(string[] settings) =>
        _app = BoardHost.Build(["--Lab:DataFolder", _folder.Path, "--Board:Url", "http://127.0.0.1:0", .. settings], new FixedTime(Now));

    public IEnumerable<string> Urls => _app.Urls;

    public string WarehouseFile => _folder.File("warehouse.db");

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    public static async Task<RunningBoard> StartAsync(params string[] settings)
    {
        var board = new RunningBoard(settings);
        await BoardHost.StartAsync(board._app, Token);
        board._client.BaseAddress = new Uri(board._app.Urls.Single());
        return board;
    }

    public Task InsertAsync(string sql, object? parameters = null) => _app.Services.GetRequiredService<LabWarehouse>()
        .WriteAsync(session => session.Connection.ExecuteAsync(sql, parameters, session.Transaction), Token);

    public Task<HttpResponseMessage> GetAsync(string address, string? host = null)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, address);
        request.Headers.Host = host;
        return _client.SendAsync(request, Token);
    }

    /// <summary>A page that is there, as the browser gets it.</summary>
    public async Task<string> PageAsync(string address)
    {
        using var answer = await GetAsync(address);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync(Token);
    }

    public async ValueTask DisposeAsync()
    {
        _client.Dispose();
        await _app.DisposeAsync();
        SqliteConnection.ClearAllPools();
        _folder.Dispose();
    }
}
