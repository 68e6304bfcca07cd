using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using LabPipeline.Intake.Tests.Storing;

namespace LabPipeline.Intake.Tests.Histories;

/// <summary>Random histories of a drop folder and a broker against the model; a failure is shrunk to the fewest steps and names its seed.</summary>
/// <remarks><c>LABPIPELINE_HISTORIES=1000</c> asks for more histories than the default.</remarks>
public sealed class HistoryTests(ITestOutputHelper output)
{
    private const int ByDefault = 60;
    private const int Names = 4;

    // Histories are up to so many steps long, from the first to the last: long enough that most have files taken, and trouble around them.
    private const int ShortestBound = 40;
    private const int LongestBound = 160;

    private static readonly DateTime FirstWrite = new(2026, 1, 14, 8, 0, 0, DateTimeKind.Utc);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(2, 8, 10, 14, 26, 29, 30, 31, 32, 81)]
    public void Intake_WhateverHappensToItsFolderAndBroker_KeepsAndTellsWhatTheModelSays()
    {
        var (histories, messages, deliveries) = (0, 0, 0);
        var wanted = Environment.GetEnvironmentVariable("LABPIPELINE_HISTORIES") is { Length: > 0 } asked ? int.Parse(asked, CultureInfo.InvariantCulture) : ByDefault;

        Prop.ForAll(Arb.From(Gen.NonEmptyListOf(AnyStep()).Select(steps => steps.ToArray()), Fewer), HoldsAsync)
            .Check(Config.QuickThrowOnFailure.WithMaxTest(wanted).WithStartSize(ShortestBound).WithEndSize(LongestBound));

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{histories} histories, {messages} messages in {deliveries} deliveries"));
        Assert.True(deliveries > messages, "A broker that never hands out a message twice proves nothing.");

        async Task<bool> HoldsAsync(Step[] steps)
        {
            await using var bench = await IntakeBench.CreateAsync(SugarProfile.FinalNewline);
            await using var bus = await HistoryBus.StartAsync(bench);
            await LiveAsync(bench, bus, steps);
            (histories, messages, deliveries) = (histories + 1, messages + await bench.OneAsync<int>("select count(*) from outbox"), deliveries + bus.Deliveries);
            return true;
        }
    }

    private static Gen<Step> AnyStep() =>
        from kind in Gen.Frequency(
            (6, Gen.Constant(StepKind.Drop)), (2, Gen.Constant(StepKind.Copy)), (2, Gen.Constant(StepKind.Rename)), (2, Gen.Constant(StepKind.Truncate)),
            (1, Gen.Constant(StepKind.Remove)), (4, Gen.Constant(StepKind.Wait)), (1, Gen.Constant(StepKind.ClockJump)), (8, Gen.Constant(StepKind.Look)),
            (2, Gen.Constant(StepKind.LookAndCrash)), (1, Gen.Constant(StepKind.Restart)), (4, Gen.Constant(StepKind.ReExport)), (2, Gen.Constant(StepKind.BrokerStop)),
            (2, Gen.Constant(StepKind.BrokerBlock)), (3, Gen.Constant(StepKind.BrokerBack)), (1, Gen.Constant(StepKind.AnswerLost)), (4, Gen.Constant(StepKind.Relay)),
            (3, Gen.Constant(StepKind.Deliver)))
        from one in Gen.Choose(0, Names - 1)
        from other in Gen.Choose(0, 99)
        select new Step(kind, one, other);

    private static IEnumerable<Step[]> Fewer(Step[] steps)
    {
        if (steps.Length > 3)
        {
            yield return steps[..(steps.Length / 2)];
            yield return steps[(steps.Length / 2)..];
        }

        for (var left = 0; left < steps.Length && steps.Length > 1; left++)
        {
            yield return [.. steps[..left], .. steps[(left + 1)..]];
        }
    }

    /// <summary>One history to its end, where everything is as the model says.</summary>
    private static async Task LiveAsync(IntakeBench bench, HistoryBus bus, Step[] steps)
    {
        var model = new FolderModel();
        foreach (var step in steps)
        {
            await ApplyAsync(bench, bus, model, step);
        }

        // Whatever is still settling is taken in the end.
        foreach (var last in new[] { new Step(StepKind.Look, 0, 0), new Step(StepKind.Wait, 0, 9), new Step(StepKind.Look, 0, 0) })
        {
            await ApplyAsync(bench, bus, model, last);
        }

        await AssertSameAsync(bench, model);
        await AssertToldAsync(bench, bus, model);
    }

    private static Task ApplyAsync(IntakeBench bench, HistoryBus bus, FolderModel model, Step step) => step.Kind switch
    {
        StepKind.BrokerStop or StepKind.BrokerBlock or StepKind.BrokerBack or StepKind.AnswerLost or StepKind.Relay or StepKind.Deliver => ApplyToBusAsync(bus, step),
        StepKind.Wait or StepKind.ClockJump or StepKind.Restart => PassAsync(bench, bus, model, step),
        StepKind.Look or StepKind.LookAndCrash => LookAsync(bench, model, step.Kind == StepKind.Look),
        _ => ApplyToFolderAsync(bench, model, step),
    };

    private static async Task ApplyToBusAsync(HistoryBus bus, Step step)
    {
        switch (step.Kind)
        {
            case StepKind.BrokerStop:
                bus.Broker.Stop();
                break;
            case StepKind.BrokerBlock:
                bus.Broker.Block();
                break;
            case StepKind.BrokerBack:
                bus.Broker.ComeBack();
                break;
            case StepKind.AnswerLost:
                bus.Broker.LoseNextAnswer();
                break;
            case StepKind.Relay:
                await bus.RunAsync();
                break;
            default:
                await bus.DeliverAsync(step.Other);
                break;
        }
    }

    private static async Task PassAsync(IntakeBench bench, HistoryBus bus, FolderModel model, Step step)
    {
        switch (step.Kind)
        {
            case StepKind.Wait:
                bench.Time.Advance(TimeSpan.FromSeconds(step.Other % 10));
                model.Wait(step.Other % 10);
                break;
            case StepKind.ClockJump:
                bench.Time.Jump(TimeSpan.FromHours((step.Other - 50) * 12));
                bus.Time.Jump(TimeSpan.FromHours((step.Other - 50) * 12));
                break;
            default:
                bench.Restart();
                model.Restart();
                await bus.RestartAsync();
                break;
        }
    }

    private static async Task ApplyToFolderAsync(IntakeBench bench, FolderModel model, Step step)
    {
        var (name, other) = (NameOf(step.One), NameOf(step.Other));
        var text = model.TextOf(name);
        switch (step.Kind)
        {
            case StepKind.Drop:
                await ExportAsync(bench, model, name, HistoryFile.Contents[step.Other % HistoryFile.Contents.Count]);
                break;
            case StepKind.ReExport when model.LastExportOf(name) is { } last:
                await ExportAsync(bench, model, name, step.Other % 2 == 0 ? ReExport.WithARowMore(last) : ReExport.WithAnotherValue(last));
                break;
            case StepKind.Copy when text is not null && name != other:
                await WriteAsync(bench, other, text, model.Write(other, text));
                break;
            case StepKind.Truncate when text is { Length: > 1 }:
                var cut = text[..(1 + (step.Other % (text.Length - 1)))];
                await WriteAsync(bench, name, cut, model.Write(name, cut));
                break;
            case StepKind.Rename when text is not null && name != other:
                File.Move(PathOf(bench, name), PathOf(bench, other), overwrite: true);
                model.Rename(name, other);
                break;
            case StepKind.Remove when text is not null:
                File.Delete(PathOf(bench, name));
                model.Remove(name);
                break;
            default:
                break;
        }
    }

    private static async Task LookAsync(IntakeBench bench, FolderModel model, bool toItsEnd)
    {
        if (toItsEnd)
        {
            await bench.LookAsync();
            model.Look(putAway: true);
            return;
        }

        await bench.LookAndEndBeforePutAwayAsync();
        model.Look(putAway: false);
        model.Restart();
    }

    private static Task ExportAsync(IntakeBench bench, FolderModel model, string name, string text) => WriteAsync(bench, name, text, model.Export(name, text));

    private static async Task WriteAsync(IntakeBench bench, string name, string text, int version)
    {
        await bench.DropAsync(name, text);
        File.SetLastWriteTimeUtc(PathOf(bench, name), FirstWrite.AddSeconds(version));
    }

    private static async Task AssertSameAsync(IntakeBench bench, FolderModel model)
    {
        Assert.Equal(model.Names, Directory.EnumerateFiles(bench.Drop).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal));
        Assert.Equal(model.Contents, (await FilesAsync(bench)).Values.Order(StringComparer.Ordinal));
        Assert.Equal(
            model.Values,
            (await bench.QueryAsync<string>("select row_key || '=' || raw_value || ' (' || standing || ')' from reading")).Order(StringComparer.Ordinal));
        Assert.Equal(
            model.Names.Where(name => !model.TextOf(name)!.EndsWith('\n')),
            (await bench.QueryAsync<string>("select name from held_file")).Order(StringComparer.Ordinal));
    }

    /// <summary>Others hear of every file that was taken, whatever became of the broker.</summary>
    private static async Task AssertToldAsync(IntakeBench bench, HistoryBus bus, FolderModel model)
    {
        var told = (await bus.DrainAsync()).Select(body => body.GetProperty("FileId").GetInt64()).ToHashSet();
        Assert.Equal(model.Contents, (await FilesAsync(bench)).Where(file => told.Contains(file.Key)).Select(file => file.Value).Order(StringComparer.Ordinal));
    }

    /// <summary>What was made of the files in the ledger, with their contents as the archive keeps them.</summary>
    private static async Task<IReadOnlyDictionary<long, string>> FilesAsync(IntakeBench bench)
    {
        var files = new Dictionary<long, string>();
        foreach (var (id, state, path) in await bench.QueryAsync<(long, string, string)>("select file_id, state, archived_as from source_file"))
        {
            files.Add(id, $"{(state == "refused" ? state : "accepted")} {await File.ReadAllTextAsync(Path.Combine(bench.Archive, path), Stop)}");
        }

        return files;
    }

    private static string NameOf(int number) => string.Create(CultureInfo.InvariantCulture, $"{(char)('a' + (number % Names))}.csv");

    private static string PathOf(IntakeBench bench, string name) => Path.Combine(bench.Drop, name);
}
