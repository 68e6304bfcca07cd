using System.Net;
using System.Net.Sockets;
using Dapper;
using LabPipeline.Board.People;
using LabPipeline.Board.Serving;
using LabPipeline.Hosting;
using LabPipeline.Station;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using Microsoft.AspNetCore.Builder;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Playwright;
using Spectre.Console.Testing;

namespace LabPipeline.Board.Browser.Tests;

/// <summary>The demonstration season with the whole station running over it, its board open, a person of each role, and a browser.</summary>
public sealed class DemoBoard : IAsyncLifetime
{
    public const string Password = "four pale russet chips";

    private readonly ScratchFolder _folder = new();
    private IHost? _station;
    private WebApplication? _board;
    private IPlaywright? _playwright;

    /// <summary>Null when the tests can run; otherwise why they are skipped.</summary>
    public string? Lack { get; private set; }

    public IBrowser Browser { get; private set; } = null!;

    public string Address { get; private set; } = "";

    public string Folder => _folder.Path;

    private LabWarehouse Warehouse => _board!.Services.GetRequiredService<LabWarehouse>();

    public async ValueTask InitializeAsync()
    {
        if (FindChromium() is not { } chromium)
        {
            Lack = Requirement.Waive(Requirement.Browser, "no chromium is installed");
            return;
        }

        using var console = new TestConsole();
        Assert.Equal(ExitCode.Done, await StationApp.RunAsync(["demo", "--data", Folder], console, TextWriter.Null));
        _station = StationHost.Build(Folder);
        await LabHost.PrepareAsync(_station.Services, CancellationToken.None);
        await _station.StartAsync();
        Address = $"http://127.0.0.1:{FreePort()}";
        _board = BoardHost.Build(["--Lab:DataFolder", Folder, "--Board:Url", Address], TimeProvider.System);
        await BoardHost.StartAsync(_board, CancellationToken.None);
        foreach (var role in RoleNames.All)
        {
            Assert.Null(await _board.Services.GetRequiredService<PeopleDesk>().AddAsync(NameOf(role), RoleNames.Find(role)!.Value, Password, "test", CancellationToken.None));
        }

        _playwright = await Playwright.CreateAsync();
        Browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = chromium, Args = ["--no-sandbox"] });
    }

    /// <summary>A page of a browser of its own, with the person of a role signed in.</summary>
    public async Task<IPage> OpenAsync(string role, string address = "/")
    {
        var context = await Browser.NewContextAsync(new BrowserNewContextOptions { BaseURL = Address, ViewportSize = new ViewportSize { Width = 1366, Height = 768 } });
        var page = await context.NewPageAsync();
        await page.GotoAsync("/sign-in?back=" + Uri.EscapeDataString(address));
        await page.FillAsync("#name", NameOf(role));
        await page.FillAsync("#password", Password);
        await page.ClickAsync("main button[type=submit]");
        return page;
    }

    public static string NameOf(string role) => "some." + role;

    public Task<IEnumerable<T>> QueryAsync<T>(string sql, object? parameters = null) =>
        Warehouse.ReadAsync(session => session.Connection.QueryAsync<T>(sql, parameters), TestContext.Current.CancellationToken);

    public Task ExecuteAsync(string sql, object? parameters = null) =>
        Warehouse.WriteAsync(session => session.Connection.ExecuteAsync(sql, parameters, session.Transaction), TestContext.Current.CancellationToken);

    public async ValueTask DisposeAsync()
    {
        if (Browser is not null)
        {
            await Browser.DisposeAsync();
        }

        _playwright?.Dispose();
        if (_board is not null)
        {
            await _board.DisposeAsync();
        }

        if (_station is not null)
        {
            await _station.StopAsync();
            _station.Dispose();
        }

        SqliteConnection.ClearAllPools();
        _folder.Dispose();
    }

    private static string? FindChromium() =>
        new[] { "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome" }.FirstOrDefault(File.Exists);

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
