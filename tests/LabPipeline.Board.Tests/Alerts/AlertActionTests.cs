using System.Net;
using LabPipeline.Board.Alerts;
using LabPipeline.Board.People;

namespace LabPipeline.Board.Tests.Alerts;

public sealed class AlertActionTests
{
    [Theory]
    [InlineData(RoleNames.Look, "seen", HttpStatusCode.Forbidden)]
    [InlineData(RoleNames.Look, "settle", HttpStatusCode.Forbidden)]
    [InlineData(RoleNames.Bench, "seen", HttpStatusCode.Redirect)]
    [InlineData(RoleNames.Bench, "settle", HttpStatusCode.Forbidden)]
    [InlineData(RoleNames.Manage, "settle", HttpStatusCode.Redirect)]
    [InlineData(RoleNames.Administer, "settle", HttpStatusCode.Redirect)]
    public async Task Action_ByRole_IsDoneOrRefused(string role, string action, HttpStatusCode expected)
    {
        await using var board = await RunningBoard.StartForNobodyAsync();
        await board.SignInAsync(role);
        await Season.AddAlertAsync(board, 1, "hold", "late pull", "Late.");

        using var answer = await board.PostAsync("/password", $"/alert/1/{action}", ("why", "looked into"));

        Assert.Equal(expected, answer.StatusCode);
        var changed = await board.QueryAsync<string>("select coalesce(acknowledged_by, settled_by) from qc_alert where coalesce(acknowledged_by, settled_by) is not null");
        Assert.Equal(expected == HttpStatusCode.Redirect ? [role] : [], changed);
        var logged = await board.QueryAsync<string>("select who from change_log where subject = 'alert:1'");
        Assert.Equal(expected == HttpStatusCode.Redirect ? [role] : [], logged);
    }

    [Fact]
    public async Task Settling_WithoutAReason_ChangesNothing()
    {
        await using var board = await RunningBoard.StartAsync();
        await Season.AddAlertAsync(board, 1, "hold", "late pull", "Late.");

        using var answer = await board.PostAsync("/alert/1", "/alert/1/settle", ("why", "  "));

        Assert.Equal("/alert/1?said=reason-missing", answer.Headers.Location?.ToString());
        Assert.Equal(["open"], await board.QueryAsync<string>("select state from qc_alert"));
    }

    [Fact]
    public async Task Alert_ThatDoesNotExist_IsNotFound()
    {
        await using var board = await RunningBoard.StartAsync();

        using var answer = await board.GetAsync("/alert/99");

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public void Strip_OfDuplicates_HoldsBothResultsAndTheLimit()
    {
        var strip = Assert.Single(EvidenceStrip.Of(FactList.Of(
            """{"glucose, extract 1":"0.0505 mg/g","glucose, extract 2":"0.0648 mg/g","glucose range":"0.0143","glucose limit":"0.004"}""")));

        Assert.Equal(("glucose", 0.0505m, 0.0648m, 0.004m), (strip.Quantity, strip.Lowest, strip.Highest, strip.Limit));
        Assert.True(strip.PositionOf(strip.Lowest, 100) < strip.PositionOf(strip.Lowest + 0.004m, 100));
        Assert.Equal(90, strip.PositionOf(strip.Highest, 100), 6);
    }

    [Theory]
    [InlineData("""{"cleaned surface %":"75","target %":"90"}""")]
    [InlineData("""{"glucose, extract 1":"0.0505 mg/g"}""")]
    [InlineData("""{"glucose, extract 1":"below","glucose, extract 2":"0.1"}""")]
    public void Strip_WithoutTwoNumbersToCompare_IsNotDrawn(string facts) => Assert.Empty(EvidenceStrip.Of(FactList.Of(facts)));
}
