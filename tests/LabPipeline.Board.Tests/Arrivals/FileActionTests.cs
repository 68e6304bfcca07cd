using LabPipeline.Board.People;

namespace LabPipeline.Board.Tests.Arrivals;

public sealed class FileActionTests
{
    // Two values of one run: line 14 in effect from file 1; file 2 brings other values for lines 14 and 15.
    private const string Contested =
        """
        update source_file set first_reading_id = 13, last_reading_id = 14 where file_id = 2;
        insert into reading values (13, 1, 'a', 1, 'X', 0.061, 0, '0,061', 'g/L', '1', 1, null, null, 'JR', null, null, 2, 14, 1),
                                   (14, 1, 'c', 1, 'X', 0.007, 0, '0,007', 'g/L', '2', 1, null, null, 'JR', null, null, 2, 15, 1);
        """;

    [Fact]
    public async Task ReExport_WhenOneRowIsChosen_TakesEffectThereAndStaysContestedElsewhere()
    {
        await using var board = await RunningBoard.StartAsync();
        await Season.FillAsync(board);
        await Season.AddFileAsync(board, 2, "stored", null);
        await board.InsertAsync(Contested);

        var page = await board.PageAsync("/arrival/2");
        using var answer = await board.PostAsync("/arrival/2", "/arrival/2/accept", ("why", "set up anew"), ("chosen", "reading:13"));

        Assert.Contains("0,061 g/L", page, StringComparison.Ordinal);
        Assert.Equal("/arrival/2?said=accepted", answer.Headers.Location?.ToString());
        Assert.Equal(["11 2", "12 1", "13 0", "14 1"], await board.QueryAsync<string>("select reading_id || ' ' || standing from reading order by reading_id"));
        Assert.Equal(["administer set up anew"], await board.QueryAsync<string>("select who || ' ' || why from change_log where what = '1 values of a re-export accepted'"));
        Assert.Single(await board.QueryAsync<string>("select message_id from outbox where type like '%ReadingsChanged'"));
    }

    [Theory]
    [InlineData("reading:12")]
    [InlineData("reading:999")]
    [InlineData("control:13")]
    [InlineData("nonsense")]
    public async Task ReExport_WhenSomethingElseIsNamed_StaysAsItWas(string key)
    {
        await using var board = await RunningBoard.StartAsync();
        await Season.FillAsync(board);
        await Season.AddFileAsync(board, 2, "stored", null);
        await board.InsertAsync(Contested);

        using var answer = await board.PostAsync("/arrival/2", "/arrival/2/accept", ("why", "set up anew"), ("chosen", key));

        Assert.Equal("/arrival/2?said=nothing-accepted", answer.Headers.Location?.ToString());
        Assert.Equal(["11 0", "12 1", "13 1", "14 1"], await board.QueryAsync<string>("select reading_id || ' ' || standing from reading order by reading_id"));
    }

    [Fact]
    [Shows(78)]
    public async Task File_WhenTakenOut_CountsNoMoreAndSaysWhoAndWhy()
    {
        await using var board = await RunningBoard.StartAsync();
        await Season.FillAsync(board);

        using var answer = await board.PostAsync("/arrival/1", "/arrival/1/take-out", ("why", "wrong day"));
        using var again = await board.PostAsync("/arrival/1", "/arrival/1/take-out", ("why", "wrong day"));

        Assert.Equal("/arrival/1?said=taken-out", answer.Headers.Location?.ToString());
        Assert.Equal("/arrival/1?said=not-taken-out", again.Headers.Location?.ToString());
        Assert.Contains("Taken out by administer: wrong day", await board.PageAsync("/arrival/1"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task File_ForARoleThatOnlyReads_OffersNothingToDo()
    {
        await using var board = await RunningBoard.StartForNobodyAsync();
        await board.SignInAsync(RoleNames.Bench);
        await Season.FillAsync(board);

        Assert.DoesNotContain("take-out", await board.PageAsync("/arrival/1?dry=1"), StringComparison.Ordinal);
    }
}
