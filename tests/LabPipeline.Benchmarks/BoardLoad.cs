using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using LabPipeline.Board.People;
using LabPipeline.Station;
using Microsoft.Data.Sqlite;
using Spectre.Console;

namespace LabPipeline.Benchmarks;

/// <summary>People looking at the board of a large warehouse while files are loaded into it: how long pages take, and how much slower loading becomes.</summary>
/// <remarks>Station and board are one process as after 'station run', the people another one. Rounds with and without people alternate, so that what else the machine does strikes both.</remarks>
internal sealed class BoardLoad(string folder, Uri board, Process station, int users, int rows)
{
    /// <summary>Name of the question whether something changed.</summary>
    public const string News = "(news)";

    private const string Password = "four pale russet chips";
    private const int RowsPerFile = 50_000;
    private const int WarmingTimes = 40;
    private const double TargetMilliseconds = 200;
    private const double TargetSlowing = 0.10;

    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan Settling = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan Quiet = TimeSpan.FromSeconds(20);

    private readonly IReadOnlyList<string> _samples = BoardWarehouse.MeasuredSamples(Path.Combine(folder, "warehouse.db"));
    private int _files;

    private IReadOnlyList<BoardPage> Pages =>
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

    public static async Task<int> RunAsync(string[] args)
    {
        var (millions, users, rounds, rows) = (Option(args, "--millions", 10), Option(args, "--users", 20), Option(args, "--rounds", 3), Option(args, "--rows", 1_000_000));
        var folder = Directory.CreateTempSubdirectory("labpipeline-board-").FullName;
        try
        {
            await PrepareAsync(folder, millions);
            var address = new Uri($"http://127.0.0.1:{FreePort()}");
            using var station = Start(await PublishedStation.PathAsync(), folder, address);
            try
            {
                var load = new BoardLoad(folder, address, station, users, rows);
                await load.UntilOpenAsync();
                return await load.MeasureAsync(rounds);
            }
            finally
            {
                station.Kill();
                await station.WaitForExitAsync();
            }
        }
        finally
        {
            SqliteConnection.ClearAllPools();
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task PrepareAsync(string folder, int millions)
    {
        await StationApp.RunAsync(["demo", "--data", folder], AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(TextWriter.Null) }), TextWriter.Null);
        var secret = Path.Combine(folder, "password");
        await File.WriteAllTextAsync(secret, Password);
        await StationApp.RunAsync(["person", "add", "some.one", "--role", RoleNames.Manage, "--password-file", secret, "--data", folder], AnsiConsole.Console, Console.Error);
        var watch = Stopwatch.StartNew();
        var readings = BoardWarehouse.Fill(Path.Combine(folder, "warehouse.db"), millions * 1_000_000);
        Write($"{readings:N0} readings, {new FileInfo(Path.Combine(folder, "warehouse.db")).Length / 1048576.0:N0} MB, filled in {watch.Elapsed.TotalSeconds:0} s");
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

    private async Task UntilOpenAsync()
    {
        using var client = new HttpClient();
        while (Count("select count(*) from heartbeat where caught_up_at is not null") < 6 || !await AnswersAsync(client))
        {
            await Task.Delay(LookEvery);
        }
    }

    private async Task<bool> AnswersAsync(HttpClient client)
    {
        try
        {
            return await client.GetStringAsync(new Uri(board, "/health/live")) == "Healthy";
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }

    private async Task<int> MeasureAsync(int rounds)
    {
        var people = Enumerable.Range(1, users).Select(number => new BoardUser(board, number)).ToList();
        foreach (var person in people)
        {
            await person.SignInAsync("some.one", Password);
        }

        // The first requests also pay for the compilation of everything they run through, as does the first file.
        await people[0].WarmAsync(Pages, WarmingTimes);
        await WithPeopleAsync(people, new PageTimes(), () => LoadAsync(RowsPerFile * 2));
        var (quiet, busy, alone, beside) = (new PageTimes(), new PageTimes(), new List<double>(), new List<double>());
        await WithPeopleAsync(people, quiet, () => Task.Delay(Quiet));
        for (var round = 1; round <= rounds; round++)
        {
            await UntilIdleAsync();
            var before = ProcessorSeconds();
            alone.Add(await LoadAsync(rows));
            await UntilIdleAsync();
            var between = ProcessorSeconds();
            await WithPeopleAsync(people, busy, async () => beside.Add(await LoadAsync(rows)));
            Write($"round {round}: {alone[^1]:N0} rows/s without people, {beside[^1]:N0} rows/s with {users}; station's processor {between - before:0.0} s and {ProcessorSeconds() - between:0.0} s; load average {LoadAverage()}");
        }

        people.ForEach(person => person.Dispose());
        quiet.Print($"{users} people, nothing loaded");
        var p95 = busy.Print($"{users} people while files are loaded");
        var slowing = 1 - (Median(beside) / Median(alone));
        Write($"median {Median(alone):N0} rows/s without, {Median(beside):N0} rows/s with people: slower by {slowing:P1}; targets: p95 {TargetMilliseconds:0} ms, {TargetSlowing:P0}");
        return p95 <= TargetMilliseconds && slowing <= TargetSlowing ? 0 : 1;
    }

    private async Task WithPeopleAsync(IEnumerable<BoardUser> people, PageTimes times, Func<Task> meanwhile)
    {
        using var stop = new CancellationTokenSource();
        var looking = people.Select(person => Task.Run(() => person.LookAsync(Pages, times.Note, stop.Token))).ToList();
        await meanwhile();
        await stop.CancelAsync();
        await Task.WhenAll(looking);
    }

    /// <summary>Drops files of <paramref name="total"/> rows together, all at once, and waits until the last one is committed.</summary>
    /// <returns>Rows a second.</returns>
    private async Task<double> LoadAsync(int total)
    {
        var staging = Directory.CreateDirectory(Path.Combine(folder, "staging")).FullName;
        var names = Enumerable.Range(_files + 1, total / RowsPerFile).ToList();
        _files += names.Count;
        foreach (var number in names)
        {
            SugarFile.Write(Path.Combine(staging, $"bulk-{number}.csv"), RowsPerFile, number);
        }

        var watch = Stopwatch.StartNew();
        foreach (var number in names)
        {
            File.Move(Path.Combine(staging, $"bulk-{number}.csv"), Path.Combine(folder, "drop", "sugar", $"bulk-{number}.csv"));
        }

        while (Count("select coalesce(sum(new_count), 0) from source_file where name like 'bulk-%'") < (long)_files * RowsPerFile)
        {
            await Task.Delay(LookEvery);
        }

        return total / watch.Elapsed.TotalSeconds;
    }

    /// <summary>Files of the round before are still being judged when the last of them is stored; the next round shall not pay for that.</summary>
    private async Task UntilIdleAsync()
    {
        var (last, since) = (-1L, Stopwatch.StartNew());
        while (since.Elapsed < Settling || Count("select count(*) from outbox where published_at is null") > 0)
        {
            await Task.Delay(LookEvery);
            if (Count("select count(*) from inbox") is var handled && handled != last)
            {
                last = handled;
                since.Restart();
            }
        }
    }

    private long Count(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={Path.Combine(folder, "warehouse.db")};Mode=ReadOnly;Pooling=false");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return (long)command.ExecuteScalar()!;
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private static int Option(string[] args, string name, int otherwise)
    {
        var at = Array.IndexOf(args, name);
        return at >= 0 && at + 1 < args.Length ? int.Parse(args[at + 1], CultureInfo.InvariantCulture) : otherwise;
    }

    private double ProcessorSeconds()
    {
        station.Refresh();
        return station.TotalProcessorTime.TotalSeconds;
    }

    /// <summary>Linux only: what else the machine did.</summary>
    private static string LoadAverage() => File.Exists("/proc/loadavg") ? File.ReadAllText("/proc/loadavg").Split(' ')[0] : "unknown";

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);

    private static void Write(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
