using LabPipeline.Intake.Folders;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Tests.Storing;

namespace LabPipeline.Intake.Tests.Folders;

/// <summary>What may lie in a drop folder besides complete files: nothing hangs, nothing is silent, nothing stops the others.</summary>
public sealed class DropFolderTests
{
    private const string One = "S26P01T03R2C";
    private static readonly string Good = SugarProfile.Rows((One, 1, "0.052"));

    [Fact]
    [Shows(18)]
    public async Task Link_WhenItIsNamedLikeAFile_IsHeldAndNotFollowed()
    {
        await using var bench = await IntakeBench.CreateAsync();
        using var elsewhere = new LabPipeline.Testing.ScratchFolder();
        await File.WriteAllTextAsync(elsewhere.File("secret.csv"), Good, TestContext.Current.CancellationToken);
        File.CreateSymbolicLink(Path.Combine(bench.Drop, "link.csv"), elsewhere.File("secret.csv"));

        await bench.LookAsync();

        var arrival = Assert.Single(await bench.ArrivalsAsync());
        Assert.Equal("waiting", arrival.State);
        Assert.Contains("link is never followed", arrival.Reason!, StringComparison.Ordinal);
        Assert.Equal(0, await bench.OneAsync<int>("select count(*) from reading"));
    }

    [Fact]
    [Shows(18)]
    public async Task Folder_WhenItIsNamedLikeAFile_IsHeld()
    {
        await using var bench = await IntakeBench.CreateAsync();
        Directory.CreateDirectory(Path.Combine(bench.Drop, "run1.csv"));

        await bench.LookAsync();

        Assert.Contains("a folder lies among the files", Assert.Single(await bench.ArrivalsAsync()).Reason!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Entry_WhenItLeftBetweenListingAndLooking_IsNotSeen()
    {
        await using var bench = await IntakeBench.CreateAsync();
        var folder = new DropFolder("sugar", bench.Drop);

        Assert.Null(FolderScan.Look(new FileInfo(Path.Combine(bench.Drop, "gone.csv")), folder));
        Assert.Null(FolderScan.Look(new DirectoryInfo(Path.Combine(bench.Drop, "gone")), folder));
    }

    [Fact]
    public async Task Link_WhenItLeadsNowhere_IsHeld()
    {
        await using var bench = await IntakeBench.CreateAsync();
        File.CreateSymbolicLink(Path.Combine(bench.Drop, "link.csv"), Path.Combine(bench.Drop, "nowhere"));

        await bench.LookAsync();

        Assert.Contains("link is never followed", Assert.Single(await bench.ArrivalsAsync()).Reason!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task File_WhenItLeavesBeforeItsEndIsLookedAt_IsHeldAndForgottenWithTheNextLook()
    {
        await using var bench = await IntakeBench.CreateAsync(SugarProfile.FinalNewline);
        var profiles = new ProfileShelf(Path.Combine(bench.Lab.ProfileFolder, "sugar"));
        profiles.Refresh();
        var review = new FolderReview(new FolderMemory(bench.Time), profiles);
        await bench.DropAsync("run1.csv", Good);
        var seen = FolderScan.List(new DropFolder("sugar", bench.Drop));
        review.Sort(seen);
        File.Delete(Path.Combine(bench.Drop, "run1.csv"));
        bench.Time.Advance(TimeSpan.FromSeconds(6));

        var findings = review.Sort(seen);

        Assert.Empty(findings.Ready);
        var held = Assert.Single(findings.Held);
        Assert.Equal("file.unreadable", held.ReasonCode);
        Assert.StartsWith("run1.csv: cannot be read", held.Reason, StringComparison.Ordinal);
        Assert.Empty(review.Sort([]).Held);
    }

    [Fact]
    [Shows(18)]
    public async Task Pipe_WhenItIsNamedLikeAFile_IsHeldWithoutHanging()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no pipes in folders.");
        await using var bench = await IntakeBench.CreateAsync();
        using var maker = System.Diagnostics.Process.Start("mkfifo", Path.Combine(bench.Drop, "pipe.csv"));
        await maker.WaitForExitAsync(TestContext.Current.CancellationToken);
        await bench.DropAsync("run1.csv", Good);

        await bench.LookAsync().WaitAsync(TimeSpan.FromSeconds(30), TestContext.Current.CancellationToken);

        Assert.Equal(["waiting", "waiting"], (await bench.ArrivalsAsync()).Select(row => row.State));
        Assert.Equal(1, await bench.OneAsync<int>("select count(*) from reading"));
    }

    [Fact]
    public async Task EmptyFile_WhenItLiesThere_IsHeldWithItsReason()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("empty.csv", "");

        await bench.LookAsync();

        Assert.Contains("found 0 bytes", Assert.Single(await bench.ArrivalsAsync()).Reason!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task File_WhenNoProfileClaimsIt_IsHeldWithItsReason()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("notes.docx", "x");

        await bench.LookAsync();

        Assert.Contains("no profile claims", Assert.Single(await bench.ArrivalsAsync()).Reason!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task File_WhenTwoProfilesClaimIt_IsHeldRatherThanGuessed()
    {
        await using var bench = await IntakeBench.CreateAsync(
            SugarProfile.RenamedIn, SugarProfile.RenamedIn.Replace("bench-sugars", "other-sugars", StringComparison.Ordinal));
        await bench.DropAsync("run1.csv", Good);

        await bench.LookAsync();

        Assert.Contains("2 profiles claim this name (bench-sugars, other-sugars)", Assert.Single(await bench.ArrivalsAsync()).Reason!, StringComparison.Ordinal);
    }

    [Theory]
    [Shows(17)]
    [InlineData(".hidden.csv")]
    [InlineData("~$run1.csv")]
    [InlineData("run1.csv.tmp")]
    [InlineData("run1.CSV.PART")]
    public async Task TemporaryName_WhenItLiesThere_IsLeftAlone(string name)
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync(name, Good);

        await bench.LookAsync();

        Assert.Empty(await bench.ArrivalsAsync());
        Assert.True(File.Exists(Path.Combine(bench.Drop, name)));
    }

    [Fact]
    [Shows(15)]
    public async Task UnreadableFile_WhenItStandsAmongGoodOnes_IsHeldAndStopsNoneOfThem()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess, "A privileged process reads every file.");
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("a.csv", Good);
        await bench.DropAsync("b.csv", SugarProfile.Rows((One, 2, "0.060")));
#pragma warning disable CA1416 // Skipped on Windows above.
        File.SetUnixFileMode(Path.Combine(bench.Drop, "a.csv"), UnixFileMode.None);
#pragma warning restore CA1416

        await bench.LookAsync();

        Assert.Contains("cannot be read", (await bench.ArrivalsAsync()).Single(row => row.Name == "a.csv").Reason!, StringComparison.Ordinal);
        Assert.Equal(1, await bench.OneAsync<int>("select count(*) from reading"));
    }

    [Fact]
    [Shows(4)]
    public async Task DropFolder_WhenRemovedAndMadeAgain_IsReportedAndWatchedAgain()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.LookAsync();
        Directory.Delete(bench.Drop, recursive: true);

        await bench.LookAsync();
        var missing = Assert.Single(await bench.ArrivalsAsync());
        Directory.CreateDirectory(bench.Drop);
        await bench.DropAsync("run1.csv", Good);
        await bench.LookAsync();

        Assert.Contains("drop folder for sugar files is gone", missing.Reason!, StringComparison.Ordinal);
        Assert.Equal("run1.csv", Assert.Single(await bench.ArrivalsAsync()).Name);
    }

    [Fact]
    [Shows(14, 19)]
    public async Task Name_WhenItPlaysPathTricks_IsMadeSafeWherePutAway()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows forbids such names itself.");
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("x\\..\\..\\y\u001b[31m:$.csv", Good);

        await bench.LookAsync();

        var kept = Assert.Single(Directory.EnumerateFiles(Path.Combine(bench.Drop, "taken")));
        Assert.Matches("^[A-Za-z0-9._-]+$", Path.GetFileName(kept));
    }
}
