using LabPipeline.Intake.Folders;
using LabPipeline.Intake.Storing;

namespace LabPipeline.Intake.Tests.Storing;

/// <summary>What becomes of files that arrive: each ends as exactly one of stored, duplicate, refused, waiting.</summary>
public sealed class ArrivalTests
{
    private const string One = "S26P01T03R2C";
    private const string Two = "S26P01T03R3A";

    [Fact]
    public async Task File_WhenComplete_IsStoredWithEveryReadingAndPutAway()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "0.052"), (Two, 2, "0.061")));

        await bench.LookAsync();

        Assert.Equal([0.052m, 0.061m], await bench.QueryAsync<decimal>("select value from reading order by row_key"));
        Assert.True(File.Exists(Path.Combine(bench.Drop, "taken", "run1.csv")));
        Assert.False(File.Exists(Path.Combine(bench.Drop, "run1.csv")));
    }

    [Fact]
    public async Task File_WhenBarcodesAreInNoPlan_WaitsAndNamesThem()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "0.052")));

        await bench.LookAsync();

        var arrival = Assert.Single(await bench.ArrivalsAsync());
        Assert.Equal("waiting", arrival.State);
        Assert.Contains(One, arrival.Reason!, StringComparison.Ordinal);
    }

    [Fact]
    [Shows(8)]
    public async Task SameBytes_WhenTheyArriveUnderAnotherName_AreADuplicateAndCountOnce()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "0.052")));
        await bench.LookAsync();
        await bench.DropAsync("copy of run1.csv", SugarProfile.Rows((One, 1, "0.052")));
        await bench.LookAsync();

        Assert.Equal("duplicate", await bench.StateOfAsync("copy of run1.csv"));
        Assert.Equal(1, await bench.OneAsync<int>("select count(*) from reading"));
        Assert.Equal(1, await bench.OneAsync<int>("select count(*) from outbox"));
    }

    [Fact]
    [Shows(10)]
    public async Task ReExport_WhenItHasMoreRows_AddsOnlyTheNewOnes()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "0.052")));
        await bench.LookAsync();
        await bench.DropAsync("run1b.csv", SugarProfile.Rows((One, 1, "0.052"), (Two, 2, "0.061")));
        await bench.LookAsync();

        var arrival = (await bench.ArrivalsAsync()).Single(row => row.Name == "run1b.csv");
        Assert.Equal((1, 1, 0), (arrival.NewCount, arrival.RepeatedCount, arrival.ConflictingCount));
        Assert.Equal(2, await bench.OneAsync<int>("select count(*) from reading"));
    }

    [Fact]
    [Shows(9)]
    public async Task ReExport_WhenAValueChanged_KeepsTheFirstInEffectAndTheSecondContested()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "0.052")));
        await bench.LookAsync();
        await bench.DropAsync("run1 edited.csv", SugarProfile.Rows((One, 1, "0.025")));
        await bench.LookAsync();

        Assert.Equal(0.052m, await bench.OneAsync<decimal>("select value from reading where standing = 0"));
        Assert.Equal(0.025m, await bench.OneAsync<decimal>("select value from reading where standing = 1"));
    }

    [Fact]
    public async Task ReExport_WhenTheSameEditArrivesInAThirdFile_IsContestedOnce()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("a.csv", SugarProfile.Rows((One, 1, "0.052")));
        await bench.DropAsync("b.csv", SugarProfile.Rows((One, 1, "0.025")));
        await bench.DropAsync("c.csv", SugarProfile.Rows((One, 1, "0.025"), (Two, 2, "0.061")));

        await bench.LookAsync();

        Assert.Equal(1, await bench.OneAsync<int>("select count(*) from reading where standing = 1"));
    }

    [Fact]
    public async Task File_WhenOneRowIsBad_IsRefusedWholeWithTheReasonBesideIt()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "0.052"), (Two, 2, "0,061x")).Replace("0,061x", "n/a", StringComparison.Ordinal));

        await bench.LookAsync();

        Assert.Equal("refused", await bench.StateOfAsync("run1.csv"));
        Assert.Equal(0, await bench.OneAsync<int>("select count(*) from reading"));
        var reason = await File.ReadAllTextAsync(Path.Combine(bench.Drop, "refused", "run1.csv.reason.txt"), TestContext.Current.CancellationToken);
        Assert.Contains("run1.csv line 3", reason, StringComparison.Ordinal);
        Assert.Contains("n/a", reason, StringComparison.Ordinal);
    }

    [Fact]
    public async Task File_WhenRefusedAndDroppedAgainUnchanged_IsReadAgain()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "n/a")));
        await bench.LookAsync();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "n/a")));
        await bench.LookAsync();

        Assert.Equal(["refused", "refused"], (await bench.ArrivalsAsync()).Select(row => row.State));
    }

    [Fact]
    [Shows(16)]
    public async Task BadFile_WhenItStandsFirstAmongGoodOnes_StopsNoneOfThem()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("a bad.csv", "\0\0\0");
        await bench.DropAsync("b good.csv", SugarProfile.Rows((One, 1, "0.052")));

        await bench.LookAsync();

        Assert.Equal(["refused", "waiting"], (await bench.ArrivalsAsync()).Select(row => row.State));
    }

    [Fact]
    [Shows(48)]
    public async Task Intake_WhenKilledAfterCommitBeforePuttingAway_StoresOnceAndReportsNoDuplicate()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "0.052")));
        await bench.LookAsync();
        var original = new FileInfo(Path.Combine(bench.Drop, "taken", "run1.csv"));
        original.MoveTo(Path.Combine(bench.Drop, "run1.csv"));
        await bench.Warehouse.WriteAsync(
            async session => await Dapper.SqlMapper.ExecuteAsync(session.Connection, "update arrival set put_away = 0", transaction: session.Transaction),
            TestContext.Current.CancellationToken);
        bench.Restart();

        await bench.LookAsync();

        Assert.Equal("waiting", Assert.Single(await bench.ArrivalsAsync()).State);
        Assert.Equal(1, await bench.OneAsync<int>("select count(*) from reading"));
    }

    [Fact]
    public async Task RefusedFile_WhenTheProcessEndedBeforeItWasPutAway_ArrivedOnceAndLiesBesideItsReason()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "n/a")));
        await bench.TakeAsync("run1.csv");
        bench.Restart();

        await bench.LookAsync();

        Assert.Equal("refused", Assert.Single(await bench.ArrivalsAsync()).State);
        Assert.True(File.Exists(Path.Combine(bench.Drop, "refused", "run1.csv.reason.txt")));
        Assert.Equal(0, await bench.OneAsync<int>("select count(*) from arrival where put_away = 0"));
    }

    [Fact]
    [Shows(9)]
    public async Task File_WhenAnotherIsWrittenInItsPlaceBeforeItIsPutAway_IsReadToo()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "0.052")));
        var taken = Assert.Single((await bench.TakeAsync("run1.csv")).Taken);
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "0.052"), (Two, 2, "0.061")));

        PutAway.Move(new DropFolder("sugar", bench.Drop), taken);
        await bench.LookAsync();

        Assert.Equal([0.052m, 0.061m], await bench.QueryAsync<decimal>("select value from reading order by row_key"));
        Assert.Equal(2, await bench.OneAsync<int>("select count(*) from source_file"));
    }

    [Fact]
    [Shows(6)]
    public async Task File_WhenItIsNoLongerTheOneThatWasSeen_IsLeftForTheNextLook()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "0.052")));
        var seen = FolderScan.List(new DropFolder("sugar", bench.Drop)).Single();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "0.052"), (Two, 2, "0.06")));

        var result = await bench.TakeAsync(seen);

        Assert.Empty(result.Taken);
        Assert.Equal(0, await bench.OneAsync<int>("select count(*) from source_file"));
    }

    [Fact]
    [Shows(15)]
    public async Task UnreadableFile_WhenItTurnsOutSoWhileCopied_IsNamedAndStopsNoneOfTheBatch()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("good.csv", SugarProfile.Rows((One, 1, "0.052")));

        // A folder in the file's place refuses to be opened to every user, the privileged one too.
        Directory.CreateDirectory(Path.Combine(bench.Drop, "bad.csv"));
        var result = await bench.TakeAsync("bad.csv", "good.csv");

        Assert.Equal("good.csv", Assert.Single(result.Taken).File.Name);
        var held = Assert.Single(result.Unreadable);
        Assert.Equal("file.unreadable", held.ReasonCode);
        Assert.StartsWith("bad.csv: cannot be read (", held.Reason, StringComparison.Ordinal);
        Assert.Equal(1, await bench.OneAsync<int>("select count(*) from reading"));
    }

    [Fact]
    [Shows(1)]
    public async Task TenThousandFiles_WhenDroppedAtOnce_AreAllTaken()
    {
        await using var bench = await IntakeBench.CreateAsync();
        for (var number = 0; number < 10_000; number++)
        {
            await bench.DropAsync($"run{number}.csv", SugarProfile.Rows((One, number, "0.052")));
        }

        await bench.LookAsync();

        Assert.Equal(10_000, await bench.OneAsync<int>("select count(*) from reading"));
        Assert.Empty(Directory.EnumerateFiles(bench.Drop));
    }
}
