using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Tests.Storing;

/// <summary>Taking files out and accepting re-exports: a trail is left, nothing is deleted.</summary>
public sealed class FileCorrectionTests
{
    private const string One = "S26P01T03R2C";

    [Fact]
    public async Task TakeOut_WhenAnotherFileContestedAValue_LetsThatValueTakeEffect()
    {
        await using var bench = await BenchWithAConflictAsync();

        await CorrectAsync(bench, "a.csv", accept: false);

        Assert.Equal(0.025m, await bench.OneAsync<decimal>("select value from reading where standing = 0"));
        Assert.Equal(0.052m, await bench.OneAsync<decimal>("select value from reading where standing = 4"));
        Assert.Equal("taken out", await bench.StateOfAsync("a.csv"));
        Assert.Equal("Ada", await bench.OneAsync<string>("select who from change_log"));
    }

    [Fact]
    public async Task TakeOut_WhenTheSameFileIsDroppedAgain_ReadsItAgain()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("a.csv", SugarProfile.Rows((One, 1, "0.052")));
        await bench.LookAsync();
        await CorrectAsync(bench, "a.csv", accept: false);

        await bench.DropAsync("a again.csv", SugarProfile.Rows((One, 1, "0.052")));
        await bench.LookAsync();

        Assert.Equal(1, await bench.OneAsync<int>("select count(*) from reading where standing = 0"));
        Assert.Equal(1, await bench.OneAsync<int>("select count(*) from reading where standing = 4"));
    }

    [Fact]
    public async Task Accept_WhenAReExportWasEdited_SupersedesTheFirstValue()
    {
        await using var bench = await BenchWithAConflictAsync();

        await CorrectAsync(bench, "b.csv", accept: true);

        Assert.Equal(0.025m, await bench.OneAsync<decimal>("select value from reading where standing = 0"));
        Assert.Equal(0.052m, await bench.OneAsync<decimal>("select value from reading where standing = 2"));
    }

    private static async Task<IntakeBench> BenchWithAConflictAsync()
    {
        var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("a.csv", SugarProfile.Rows((One, 1, "0.052")));
        await bench.DropAsync("b.csv", SugarProfile.Rows((One, 1, "0.025")));
        await bench.LookAsync();
        return bench;
    }

    private static Task CorrectAsync(IntakeBench bench, string name, bool accept) => bench.Warehouse.WriteAsync(
        async session =>
        {
            var file = Assert.Single(await ArrivalListStore.FindFilesAsync(session, name));
            if (accept)
            {
                await FileCorrections.AcceptAsync(session, file, "Ada", "typing error in the first export", bench.Time.GetUtcNow());
            }
            else
            {
                await FileCorrections.TakeOutAsync(session, file, "Ada", "wrong profile", bench.Time.GetUtcNow());
            }
        },
        TestContext.Current.CancellationToken);
}
