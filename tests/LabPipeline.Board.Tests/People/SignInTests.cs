using System.Net;
using LabPipeline.Board.People;

namespace LabPipeline.Board.Tests.People;

public sealed class SignInTests
{
    private const string Right = "four pale russet chips";

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Board_WithoutPeople_ShowsHowTheFirstIsMadeAndNothingElse()
    {
        await using var board = await RunningBoard.StartForNobodyAsync();

        using var asked = await board.GetAsync("/alerts");
        var page = await board.PageAsync("/sign-in");

        Assert.Equal("/sign-in?back=%2Falerts", asked.Headers.Location?.PathAndQuery);
        Assert.Contains("person add NAME --role administer", page, StringComparison.Ordinal);
        Assert.DoesNotContain("type=\"password\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Person_WithTheRightPassword_ComesBackToThePageAskedForWithAGuardedCookie()
    {
        await using var board = await RunningBoard.StartForNobodyAsync();
        Assert.Null(await board.Desk.AddAsync("sam", Role.Look, Right, "test", Token));

        using var refused = await board.PostAsync("/sign-in?back=/alerts", "/sign-in", ("name", "sam"), ("password", "wrong"), ("back", "/alerts"));
        using var answer = await board.PostAsync("/sign-in", "/sign-in", ("name", "sam"), ("password", Right), ("back", "/alerts"));

        Assert.Equal("/sign-in?said=wrong-sign-in&back=%2Falerts", refused.Headers.Location?.ToString());
        Assert.Equal("/alerts", answer.Headers.Location?.ToString());
        var cookie = answer.Headers.GetValues("Set-Cookie").Single(text => text.StartsWith("board-person=", StringComparison.Ordinal));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("sam", await board.PageAsync("/alerts"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("//elsewhere.example")]
    [InlineData("/\\elsewhere.example")]
    [InlineData("https://elsewhere.example")]
    [InlineData("javascript:alert(1)")]
    public async Task SignIn_WhenToldToGoElsewhere_StaysOnTheBoard(string back)
    {
        await using var board = await RunningBoard.StartForNobodyAsync();
        Assert.Null(await board.Desk.AddAsync("sam", Role.Look, Right, "test", Token));

        using var answer = await board.PostAsync("/sign-in", "/sign-in", ("name", "sam"), ("password", Right), ("back", back));

        Assert.Equal("/", answer.Headers.Location?.ToString());
    }

    [Fact]
    public async Task SignIn_WhenRoleOrPasswordChange_HasEnded()
    {
        await using var board = await RunningBoard.StartForNobodyAsync();
        await board.SignInAsync(RoleNames.Bench);
        await board.PageAsync("/");

        await board.InsertAsync("update board_user set stamp = 'another'");

        using var answer = await board.GetAsync("/");
        Assert.StartsWith("/sign-in", answer.Headers.Location?.PathAndQuery, StringComparison.Ordinal);
    }

    [Fact]
    [Shows(72)]
    public async Task Form_WithoutItsToken_ChangesNothing()
    {
        await using var board = await RunningBoard.StartAsync();
        using var form = new FormUrlEncodedContent([KeyValuePair.Create("back", "/")]);

        using var answer = await board.Client.PostAsync(new Uri("/sign-out", UriKind.Relative), form, Token);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        await board.PageAsync("/");
    }

    [Fact]
    public async Task Password_WhenChangedByThePerson_NeedsTheOldOneAndEndsTheSignIn()
    {
        await using var board = await RunningBoard.StartForNobodyAsync();
        Assert.Null(await board.Desk.AddAsync("sam", Role.Look, Right, "test", Token));
        using var signedIn = await board.PostAsync("/sign-in", "/sign-in", ("name", "sam"), ("password", Right));
        const string next = "five golden storage bays";

        using var wrong = await board.PostAsync("/password", "/password", ("old", "no"), ("password", next), ("again", next));
        using var done = await board.PostAsync("/password", "/password", ("old", Right), ("password", next), ("again", next));

        Assert.Equal("/password?said=wrong-password", wrong.Headers.Location?.ToString());
        Assert.Equal("/sign-in?said=password-set", done.Headers.Location?.ToString());
        Assert.NotNull((await board.Desk.SignInAsync("sam", next, Token)).Person);
    }
}
