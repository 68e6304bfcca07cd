using System.Net;
using System.Text.RegularExpressions;
using Dapper;
using LabPipeline.Board.Live;
using LabPipeline.Board.People;
using LabPipeline.Board.Serving;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Builder;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;

namespace LabPipeline.Board.Tests;

/// <summary>The board as it is started, on a free port of this computer and over a warehouse of its own.</summary>
internal sealed class RunningBoard : IAsyncDisposable
{
    public static readonly DateTimeOffset Now = new(2026, 1, 14, 15, 30, 0, TimeSpan.Zero);

    private readonly ScratchFolder _folder = new();
    private readonly CookieContainer _cookies = new();
    private readonly HttpClient _client;
    private readonly WebApplication _app;

    private RunningBoard(string[] settings)
    {
        _client = new HttpClient(new SocketsHttpHandler { UseProxy = false, AllowAutoRedirect = false, CookieContainer = _cookies });
        _app = BoardHost.Build(["--Lab:DataFolder", _folder.Path, "--Board:Url", "http://127.0.0.1:0", .. settings], new FixedTime(Now));
    }

    public IEnumerable<string> Urls => _app.Urls;

    public string Folder => _folder.Path;

    public string WarehouseFile => _folder.File("warehouse.db");

    public HttpClient Client => _client;

    public PeopleDesk Desk => _app.Services.GetRequiredService<PeopleDesk>();

    public LabWarehouse Warehouse => _app.Services.GetRequiredService<LabWarehouse>();

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    /// <summary>A board with an administrator signed in.</summary>
    public static async Task<RunningBoard> StartAsync(params string[] settings)
    {
        var board = await StartForNobodyAsync(settings);
        await board.SignInAsync(RoleNames.Administer);
        return board;
    }

    /// <summary>A board nobody has signed in to, and nobody can.</summary>
    public static async Task<RunningBoard> StartForNobodyAsync(params string[] settings)
    {
        var board = new RunningBoard(settings);
        await BoardHost.StartAsync(board._app, Token);
        board._client.BaseAddress = new Uri(board._app.Urls.Single());
        return board;
    }

    /// <summary>Changes the warehouse behind the board's back; the board looks anew at once, as it does half a second later.</summary>
    public async Task InsertAsync(string sql, object? parameters = null)
    {
        await Warehouse.WriteAsync(session => session.Connection.ExecuteAsync(sql, parameters, session.Transaction), Token);
        _app.Services.GetRequiredService<LivePosition>().Forget();
    }

    public Task<IEnumerable<T>> QueryAsync<T>(string sql) => Warehouse.ReadAsync(session => session.Connection.QueryAsync<T>(sql), Token);

    /// <summary>Makes a person of a role, called as the role is, and carries their cookie from now on; no password is hashed for it.</summary>
    public async Task SignInAsync(string role)
    {
        await InsertAsync(
            "insert into board_user (name, role, password_hash, stamp, failures, closed, made_at) values (@role, @role, '', @role, 0, 0, '2026-01-01T00:00:00.000Z')",
            new { role });
        var person = await Warehouse.ReadAsync(session => PersonStore.FindAsync(session, role), Token);
        var ticket = new AuthenticationTicket(SignInSetUp.PrincipalOf(person!), CookieAuthenticationDefaults.AuthenticationScheme);
        var options = _app.Services.GetRequiredService<IOptionsMonitor<CookieAuthenticationOptions>>().Get(CookieAuthenticationDefaults.AuthenticationScheme);
        _cookies.Add(_client.BaseAddress!, new Cookie(options.Cookie.Name!, options.TicketDataFormat.Protect(ticket)));
    }

    public Task<HttpResponseMessage> GetAsync(string address, string? host = null)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, address);
        request.Headers.Host = host;
        request.Headers.Accept.ParseAdd("text/html");
        return _client.SendAsync(request, Token);
    }

    /// <summary>A page that is there, as the browser gets it.</summary>
    public async Task<string> PageAsync(string address)
    {
        using var answer = await GetAsync(address);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync(Token);
    }

    /// <summary>Sends a form as a browser does that has <paramref name="page"/> open.</summary>
    public async Task<HttpResponseMessage> PostAsync(string page, string address, params (string Name, string Value)[] fields)
    {
        var token = Regex.Match(await PageAsync(page), "name=\"__RequestVerificationToken\" value=\"([^\"]+)\"").Groups[1].Value;
        using var form = new FormUrlEncodedContent([.. fields.Select(field => KeyValuePair.Create(field.Name, field.Value)), KeyValuePair.Create("__RequestVerificationToken", token)]);
        return await _client.PostAsync(new Uri(address, UriKind.Relative), form, Token);
    }

    public async ValueTask DisposeAsync()
    {
        _client.Dispose();
        await _app.DisposeAsync();
        SqliteConnection.ClearAllPools();
        _folder.Dispose();
    }
}
