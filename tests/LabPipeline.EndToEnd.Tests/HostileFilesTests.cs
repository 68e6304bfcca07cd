using System.Globalization;
using System.Text;
using LabPipeline.EndToEnd.Tests.Crashes;

namespace LabPipeline.EndToEnd.Tests;

/// <summary>Files made to take memory or time: each ends refused or waiting within seconds, and the good one behind them is stored.</summary>
public sealed class HostileFilesTests(ITestOutputHelper output)
{
    private const int Megabyte = 1024 * 1024;

    // The promise for one service; the station runs six in one process, so what it takes before the files is not counted.
    private const long MostGrowth = 150 * Megabyte;

    private static readonly TimeSpan LongestTime = TimeSpan.FromSeconds(10);

    private static readonly byte[] Header = Encoding.ASCII.GetBytes("sample,run,seq,extract,mass,volume,dilution,glucose\n");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static IEnumerable<(string Name, Action<Stream> Write)> Corpus =>
    [
        ("a-one-line", file => Fill(file, 40 * Megabyte, "a")),
        ("b-one-quoted-cell", file => { file.Write(Header); file.Write("\""u8); Fill(file, 40 * Megabyte, "x\n"); }),
        ("c-columns", file => { Fill(file, 2 * Megabyte, "c,"); file.Write("\n1\n"u8); }),
        ("d-quotes", file => { file.Write(Header); Fill(file, 20 * Megabyte, "\"\""); file.Write("\n"u8); }),
        ("e-empty-lines", file => { file.Write(Header); Fill(file, 2 * Megabyte, "\n"); }),
        ("f-bad-rows", file => { file.Write(Header); Fill(file, 2 * Megabyte, "S98CR0000,r,1,A,1,1,1,x\n"); }),
        ("g-nul", file => { file.Write(Header); Fill(file, 20 * Megabyte, "\0"); file.Write("\n"u8); }),
        ("h-no-text", file => { Fill(file, 10 * Megabyte, "\u00ff\u00fe"); file.Write("\n"u8); }),
        ("i-long-number", file => { file.Write(Header); file.Write("S98CR0000,r,1,A,1,1,1,"u8); Fill(file, 60_000, "9"); file.Write("\n"u8); }),
    ];

    [Fact]
    [Shows(20)]
    public async Task Files_MadeToTakeMemoryOrTime_AreRefusedInBoundedMemoryAndTime()
    {
        var season = new SmallSeason(1);
        using var lab = await CrashLab.CreateAsync(season, Stop);
        using var station = lab.Start();
        await station.FirstWord;
        lab.DropNext();
        await UntilAsync(async () => await lab.UnsettledAsync() is null);
        var before = PeakOf(station.Id);
        foreach (var (name, write) in Corpus)
        {
            var began = DateTime.UtcNow;
            lab.Drop($"{name}.csv", write);
            await UntilAsync(async () => await lab.UnsettledAsync() is null);
            var took = DateTime.UtcNow - began;
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}: {took.TotalSeconds:0.0} s, peak {PeakOf(station.Id) / Megabyte} MB"));
            Assert.True(took < LongestTime, $"{name} took {took.TotalSeconds:0.0} s.");
            Assert.Equal("refused", await lab.StateOfAsync($"{name}.csv"));
        }

        Assert.InRange(PeakOf(station.Id) - before, 0, MostGrowth);
        Assert.Equal(0, await station.StopAsync(Stop));
        await lab.AssertSoundAsync();
    }

    private static async Task UntilAsync(Func<Task<bool>> done)
    {
        var end = DateTime.UtcNow + TimeSpan.FromMinutes(1);
        while (!await done())
        {
            Assert.True(DateTime.UtcNow < end, "Not settled within a minute.");
            await Task.Delay(100, Stop);
        }
    }

    private static void Fill(Stream file, int bytes, string piece)
    {
        var block = Encoding.Latin1.GetBytes(string.Concat(Enumerable.Repeat(piece, (64 * 1024 / piece.Length) + 1)));
        for (var written = 0; written < bytes; written += block.Length)
        {
            file.Write(block.AsSpan(0, Math.Min(block.Length, bytes - written)));
        }
    }

    private static long PeakOf(int process) => 1024 * long.Parse(
        File.ReadLines($"/proc/{process}/status").Single(line => line.StartsWith("VmHWM:", StringComparison.Ordinal)).Split(' ', StringSplitOptions.RemoveEmptyEntries)[^2],
        CultureInfo.InvariantCulture);
}
