using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using LabPipeline.Board.People;
using LabPipeline.Station;
using Microsoft.Data.Sqlite;
using Spectre.Console;

namespace LabPipeline.Benchmarks;

/// <summary>Station and board in one process, as after 'station run', over the warehouse of the demonstration made as large as wanted.</summary>
internal sealed class BoardStation : IAsyncDisposable
{
    private const string Person = "some.one";
    private const string Password = "four pale russet chips";
    private const int Services = 6;

    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(100);

    private readonly Process _process;
    private readonly Uri _address;
    private readonly IReadOnlyList<string> _samples;

    private BoardStation(string folder, Process process, Uri address)
    {
        (Folder, _process, _address) = (folder, process, address);
        _samples = BoardWarehouse.MeasuredSamples(Path.Combine(folder, "warehouse.db"));
    }

    public string Folder { get; }

    public IReadOnlyList<BoardPage> Pages =>
    [
        new("pull day", _ => "/"),
        new("alerts", _ => "/alerts"),
        new("arrivals", _ => "/arrivals"),
        new("sample trail", random => "/sample?barcode=" + _samples[random.Next(_samples.Count)]),
        new("season", _ => "/season?trial=KT-NITRO-25&quantity=glucose"),
        new("plots and pulls", _ => "/season/grid?trial=KT-NITRO-25"),
        new("control charts", _ => "/controls?chart=" + Uri.EscapeDataString("sugar analyser A|CTRL-LOW|glucose_in_extract")),
        new("papers", _ => "/papers?trial=KT-NITRO-25&pull=6&paper=pick-list", IsLive: false),
        new("office", _ => "/office"),
        new("services", _ => "/office/services"),
    ];

    public double ProcessorSeconds
    {
        get
        {
            _process.Refresh();
            return _process.TotalProcessorTime.TotalSeconds;
        }
    }

    public static async Task<BoardStation> StartAsync(int readings)
    {
        var folder = Directory.CreateTempSubdirectory("labpipeline-board-").FullName;
        await PrepareAsync(folder, readings);
        var address = new Uri($"http://127.0.0.1:{FreePort()}");
        var station = new BoardStation(folder, Start(await PublishedStation.PathAsync(), folder, address), address);
        using var client = new HttpClient();
        while (station.Count("select count(*) from heartbeat where caught_up_at is not null") < Services || !await station.AnswersAsync(client))
        {
            await Task.Delay(LookEvery);
        }

        return station;
    }

    /// <summary>Somebody who has signed in.</summary>
    public async Task<BoardUser> PersonAsync(int number)
    {
        var person = new BoardUser(_address, number);
        await person.SignInAsync(Person, Password);
        return person;
    }

    public long Count(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={Path.Combine(Folder, "warehouse.db")};Mode=ReadOnly;Pooling=false");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return (long)command.ExecuteScalar()!;
    }

    public async ValueTask DisposeAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
        _process.Dispose();
        SqliteConnection.ClearAllPools();
        Directory.Delete(Folder, recursive: true);
    }

    private static async Task PrepareAsync(string folder, int readings)
    {
        await StationApp.RunAsync(["demo", "--data", folder], AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(TextWriter.Null) }), TextWriter.Null);
        var secret = Path.Combine(folder, "password");
        await File.WriteAllTextAsync(secret, Password);
        await StationApp.RunAsync(["person", "add", Person, "--role", RoleNames.Manage, "--password-file", secret, "--data", folder], AnsiConsole.Console, Console.Error);
        var watch = Stopwatch.StartNew();
        var stored = BoardWarehouse.Fill(Path.Combine(folder, "warehouse.db"), readings);
        Figures.Print($"{stored:N0} readings, {Figures.Mebibytes(new FileInfo(Path.Combine(folder, "warehouse.db")).Length):N0} MB, filled in {watch.Elapsed.TotalSeconds:0} s");
        await File.WriteAllTextAsync(Path.Combine(folder, "profiles", "sugar", "bulk.json"), SugarFile.Profile.Replace("*.csv", "bulk-*.csv", StringComparison.Ordinal));
    }

    private static Process Start(string program, string folder, Uri address)
    {
        var start = new ProcessStartInfo("dotnet", [program, "run", "--data", folder]) { RedirectStandardOutput = true };
        start.Environment["Board__Url"] = address.ToString().TrimEnd('/');
        var process = Process.Start(start)!;
        process.BeginOutputReadLine();
        return process;
    }

    private async Task<bool> AnswersAsync(HttpClient client)
    {
        try
        {
            return await client.GetStringAsync(new Uri(_address, "/health/live")) == "Healthy";
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
