using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using LabPipeline.Intake.Tests.Storing;

namespace LabPipeline.Intake.Tests.Histories;

/// <summary>Random histories of a drop folder against the model; a failure is shrunk to the fewest steps and names its seed.</summary>
/// <remarks><c>LABPIPELINE_HISTORIES=1000</c> asks for more histories than the default.</remarks>
public sealed class HistoryTests
{
    private const int ByDefault = 60;
    private const int Names = 4;

    private static readonly DateTime FirstWrite = new(2026, 1, 14, 8, 0, 0, DateTimeKind.Utc);

    // The same keys with the same and other values, a bad value, a header alone, and something else altogether.
    private static readonly string[] Contents =
    [
        Rows("1=0.1", "2=0.2"), Rows("1=0.1", "2=0.2", "3=0.3"), Rows("2=0.3"), Rows("3=0.3", "1=0.1"), Rows("4=0.1", "2=0.2"), Rows("1=0.2", "4=0.1"),
        Rows("5=n/a"), SugarProfile.Header, "something else\n",
    ];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(2, 8, 14, 26, 81)]
    public void Intake_WhateverHappensToItsFolder_KeepsWhatTheModelKeeps() => Prop
        .ForAll(Arb.From(Gen.NonEmptyListOf(AnyStep()).Select(steps => steps.ToArray()), Fewer), HoldsAsync)
        .Check(Config.QuickThrowOnFailure.WithMaxTest(Environment.GetEnvironmentVariable("LABPIPELINE_HISTORIES") is { Length: > 0 } asked
            ? int.Parse(asked, CultureInfo.InvariantCulture)
            : ByDefault));

    private static Gen<Step> AnyStep() =>
        from kind in Gen.Frequency(
            (6, Gen.Constant(StepKind.Drop)), (2, Gen.Constant(StepKind.Copy)), (2, Gen.Constant(StepKind.Rename)), (2, Gen.Constant(StepKind.Truncate)),
            (1, Gen.Constant(StepKind.Remove)), (4, Gen.Constant(StepKind.Wait)), (1, Gen.Constant(StepKind.ClockJump)), (8, Gen.Constant(StepKind.Look)),
            (2, Gen.Constant(StepKind.LookAndCrash)), (1, Gen.Constant(StepKind.Restart)))
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

    private static async Task<bool> HoldsAsync(Step[] steps)
    {
        await using var bench = await IntakeBench.CreateAsync(SugarProfile.FinalNewline);
        var model = new FolderModel();
        foreach (var step in steps)
        {
            await ApplyAsync(bench, model, step);
        }

        // Whatever is still settling is taken in the end.
        foreach (var last in new[] { new Step(StepKind.Look, 0, 0), new Step(StepKind.Wait, 0, 9), new Step(StepKind.Look, 0, 0) })
        {
            await ApplyAsync(bench, model, last);
        }

        await AssertSameAsync(bench, model);
        return true;
    }

    private static async Task ApplyAsync(IntakeBench bench, FolderModel model, Step step)
    {
        var (name, other) = (NameOf(step.One), NameOf(step.Other));
        var text = model.TextOf(name);
        switch (step.Kind)
        {
            case StepKind.Drop:
                await WriteAsync(bench, model, name, Contents[step.Other % Contents.Length]);
                break;
            case StepKind.Copy when text is not null && name != other:
                await WriteAsync(bench, model, other, text);
                break;
            case StepKind.Truncate when text is { Length: > 1 }:
                await WriteAsync(bench, model, name, text[..(1 + (step.Other % (text.Length - 1)))]);
                break;
            case StepKind.Rename when text is not null && name != other:
                File.Move(PathOf(bench, name), PathOf(bench, other), overwrite: true);
                model.Rename(name, other);
                break;
            case StepKind.Remove when text is not null:
                File.Delete(PathOf(bench, name));
                model.Remove(name);
                break;
            case StepKind.Wait:
                bench.Time.Advance(TimeSpan.FromSeconds(step.Other % 10));
                model.Wait(step.Other % 10);
                break;
            case StepKind.ClockJump:
                bench.Time.Jump(TimeSpan.FromHours((step.Other - 50) * 12));
                break;
            case StepKind.Look or StepKind.LookAndCrash:
                await LookAsync(bench, model, step.Kind == StepKind.Look);
                break;
            case StepKind.Restart:
                bench.Restart();
                model.Restart();
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

    private static async Task WriteAsync(IntakeBench bench, FolderModel model, string name, string text)
    {
        await bench.DropAsync(name, text);
        File.SetLastWriteTimeUtc(PathOf(bench, name), FirstWrite.AddSeconds(model.Write(name, text)));
    }

    private static async Task AssertSameAsync(IntakeBench bench, FolderModel model)
    {
        Assert.Equal(model.Names, Directory.EnumerateFiles(bench.Drop).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal));
        var files = new List<string>();
        foreach (var (state, path) in await bench.QueryAsync<(string, string)>("select state, archived_as from source_file"))
        {
            files.Add($"{(state == "refused" ? state : "accepted")} {await File.ReadAllTextAsync(Path.Combine(bench.Archive, path), Stop)}");
        }

        Assert.Equal(model.Contents, files.Order(StringComparer.Ordinal));
        Assert.Equal(
            model.Values,
            (await bench.QueryAsync<string>("select row_key || '=' || raw_value || ' (' || standing || ')' from reading")).Order(StringComparer.Ordinal));
        Assert.Equal(0, await bench.OneAsync<int>("select count(*) from source_file f where not exists (select 1 from outbox o where o.body like '%\"FileId\":' || f.file_id || ',%')"));
        Assert.Equal(
            model.Names.Where(name => !model.TextOf(name)!.EndsWith('\n')),
            (await bench.QueryAsync<string>("select name from held_file")).Order(StringComparer.Ordinal));
    }

    private static string NameOf(int number) => string.Create(CultureInfo.InvariantCulture, $"{(char)('a' + (number % Names))}.csv");

    private static string PathOf(IntakeBench bench, string name) => Path.Combine(bench.Drop, name);

    private static string Rows(params string[] rows) => SugarProfile.Header + string.Concat(rows.Select(row => $"S26P01T03R2C,R1,{row.Split('=')[0]},A,{row.Split('=')[1]}\n"));
}
