using LabPipeline.Intake.Tests.Storing;

namespace LabPipeline.Intake.Tests.Folders;

/// <summary>A file still being written is never read in part.</summary>
public sealed class CompletenessTests
{
    private const string One = "S26P01T03R2C";
    private static readonly string Good = SugarProfile.Rows((One, 1, "0.052"));

    [Fact]
    [Shows(6)]
    public async Task GrowingFile_WhileItStillChanges_IsNotRead()
    {
        await using var bench = await IntakeBench.CreateAsync(SugarProfile.FinalNewline);
        await bench.DropAsync("run1.csv", Good);
        await bench.LookAsync();
        bench.Time.Advance(TimeSpan.FromSeconds(4));
        await File.AppendAllTextAsync(Path.Combine(bench.Drop, "run1.csv"), $"{One},R1,2,A,0.060\n", TestContext.Current.CancellationToken);
        await bench.LookAsync();
        bench.Time.Advance(TimeSpan.FromSeconds(4));
        await bench.LookAsync();

        Assert.Empty(await bench.ArrivalsAsync());

        bench.Time.Advance(TimeSpan.FromSeconds(1));
        await bench.LookAsync();

        Assert.Equal(2, await bench.OneAsync<int>("select count(*) from reading"));
    }

    [Fact]
    [Shows(7)]
    public async Task TornFile_WhenItsWriterDied_WaitsWithAReasonAndIsTakenOnceWhole()
    {
        await using var bench = await IntakeBench.CreateAsync(SugarProfile.FinalNewline);
        await bench.DropAsync("run1.csv", Good.TrimEnd('\n'));
        await bench.LookAsync();
        bench.Time.Advance(TimeSpan.FromSeconds(6));
        await bench.LookAsync();
        var torn = Assert.Single(await bench.ArrivalsAsync());

        await bench.DropAsync("run1.csv", Good);
        await bench.LookAsync();
        bench.Time.Advance(TimeSpan.FromSeconds(6));
        await bench.LookAsync();

        Assert.Contains("the last line has no line end", torn.Reason!, StringComparison.Ordinal);
        Assert.Equal(1, await bench.OneAsync<int>("select count(*) from reading"));
        Assert.Equal(0, await bench.OneAsync<int>("select count(*) from held_file"));
    }

    [Fact]
    [Shows(6)]
    public async Task FileWithADoneFile_WhenThatIsLeftFromAnEarlierFile_IsHeldUntilItsOwnComes()
    {
        await using var bench = await IntakeBench.CreateAsync(SugarProfile.DoneFile);
        var done = Path.Combine(bench.Drop, "run1.csv.done");
        await bench.DropAsync("run1.csv.done", "");
        File.SetLastWriteTimeUtc(done, DateTime.UtcNow.AddMinutes(-5));
        await bench.DropAsync("run1.csv", Good[..^8]);
        await bench.LookAsync();
        var before = Assert.Single(await bench.ArrivalsAsync());

        await bench.DropAsync("run1.csv", Good);
        await bench.DropAsync("run1.csv.done", "");
        await bench.LookAsync();

        Assert.Contains("waiting for run1.csv.done", before.Reason!, StringComparison.Ordinal);
        Assert.Equal(0.052m, await bench.OneAsync<decimal>("select value from reading"));
    }

    [Fact]
    public async Task FileWithADoneFile_WhenTheDoneFileComes_IsTaken()
    {
        await using var bench = await IntakeBench.CreateAsync(SugarProfile.DoneFile);
        await bench.DropAsync("run1.csv", Good);
        await bench.LookAsync();
        var before = Assert.Single(await bench.ArrivalsAsync());

        await bench.DropAsync("run1.csv.done", "");
        await bench.LookAsync();

        Assert.Contains("run1.csv.done", before.Reason!, StringComparison.Ordinal);
        Assert.Equal(1, await bench.OneAsync<int>("select count(*) from reading"));
        Assert.False(File.Exists(Path.Combine(bench.Drop, "run1.csv.done")));
    }

    [Fact]
    public async Task FileWithATrailer_WhenTheTrailerIsMissing_Waits()
    {
        await using var bench = await IntakeBench.CreateAsync(SugarProfile.Trailer);
        await bench.DropAsync("a.csv", Good);
        await bench.DropAsync("b.csv", Good.Replace(",1,", ",2,", StringComparison.Ordinal) + "#end of run\n");
        await bench.LookAsync();
        bench.Time.Advance(TimeSpan.FromSeconds(6));
        await bench.LookAsync();

        Assert.Contains("does not begin with '#end'", (await bench.ArrivalsAsync()).Single(row => row.Name == "a.csv").Reason!, StringComparison.Ordinal);
        Assert.Equal(1, await bench.OneAsync<int>("select count(*) from reading"));
    }
}
