using System.Text;

namespace LabPipeline.Intake.Tests.Storing;

/// <summary>Files above a megabyte are read on one thread and inserted on another; the outcome is the same.</summary>
public sealed class LargeFileTests
{
    private const string One = "S26P01T03R2C";
    private const int Rows = 60_000;

    [Fact]
    public async Task LargeFile_WhenGood_IsStoredWholeAndInOrder()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("large.csv", Text(lastValue: "0.052"));

        await bench.LookAsync();

        Assert.Equal(Rows, await bench.OneAsync<int>("select count(*) from reading"));
        Assert.Equal(0, await bench.OneAsync<int>("select count(*) from reading where line <> cast(row_key as integer) + 2"));
        Assert.Equal(Rows, await bench.OneAsync<int>("select last_reading_id - first_reading_id + 1 from source_file"));
    }

    [Fact]
    public async Task LargeFile_WhenItsLastRowIsBad_LeavesNothing()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("large.csv", Text(lastValue: "0,052"));

        await bench.LookAsync();

        Assert.Equal("refused", await bench.StateOfAsync("large.csv"));
        Assert.Equal(0, await bench.OneAsync<int>("select count(*) from reading"));
    }

    [Fact]
    [Shows(49)]
    public async Task LargeFile_WhenTheWarehouseCannotTakeIt_IsTriedAgainAndStoredOnce()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("large.csv", Text(lastValue: "0.052"));
        await bench.QueryAsync<int>("create trigger refuse before insert on reading when new.line = 40000 begin select raise(abort, 'disk trouble'); end; select 1");

        await Assert.ThrowsAnyAsync<Exception>(bench.LookAsync);
        Assert.Equal(0, await bench.OneAsync<int>("select count(*) from source_file"));
        await bench.QueryAsync<int>("drop trigger refuse; select 1");
        await bench.LookAsync();

        Assert.Equal(Rows, await bench.OneAsync<int>("select count(*) from reading"));
        Assert.Single(await bench.ArrivalsAsync());
    }

    private static string Text(string lastValue)
    {
        var text = new StringBuilder(SugarProfile.Header);
        for (var row = 0; row < Rows; row++)
        {
            text.Append(One).Append(",R1,").Append(row).Append(",A,\"").Append(row == Rows - 1 ? lastValue : "0.052").Append("\"\n");
        }

        return text.ToString();
    }
}
