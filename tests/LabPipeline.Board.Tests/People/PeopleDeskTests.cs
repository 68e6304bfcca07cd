using LabPipeline.Board.People;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Time.Testing;

namespace LabPipeline.Board.Tests.People;

public sealed class PeopleDeskTests : IAsyncLifetime
{
    private const string Right = "four pale russet chips";

    private readonly FakeTimeProvider _time = new(RunningBoard.Now);
    private ScratchWarehouse _scratch = null!;
    private PeopleDesk _desk = null!;

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _scratch = await ScratchWarehouse.CreateAsync();
        _desk = new PeopleDesk(_scratch.Warehouse, _time);
        Assert.Null(await _desk.AddAsync("Jo.Rivers", Role.Administer, Right, "test", Token));
    }

    public async ValueTask DisposeAsync()
    {
        _desk.Dispose();
        await _scratch.DisposeAsync();
    }

    [Fact]
    public async Task Password_WhenRight_SignsInUnderTheNameInAnyCase() =>
        Assert.Equal("jo.rivers", (await _desk.SignInAsync(" JO.RIVERS ", Right, Token)).Person?.Name);

    [Fact]
    [Shows(73)]
    public async Task Password_WhenStored_IsAnIteratedHashAndNowhereInTheChangeLog()
    {
        var person = await _scratch.Warehouse.ReadAsync(session => PersonStore.FindAsync(session, "jo.rivers"), Token);
        var log = await _scratch.Warehouse.ReadAsync(session => ChangeLogStore.ListAsync(session, person!.Subject), Token);

        // Format marker 0x01, then the PRF 2 (HMAC-SHA512) and the iteration count, big-endian: the version 3 layout of ASP.NET Core Identity (from memory).
        var bytes = Convert.FromBase64String(person!.PasswordHash);
        Assert.Equal((1, 2, 210_000), (bytes[0], bytes[4], (bytes[5] << 24) | (bytes[6] << 16) | (bytes[7] << 8) | bytes[8]));
        Assert.Equal(["person made"], log.Select(change => change.What));
        Assert.DoesNotContain(log, change => change.Why.Contains(Right, StringComparison.Ordinal));
    }

    [Fact]
    [Shows(73)]
    public async Task Name_AfterFiveFailures_IsLockedEvenForTheRightPasswordUntilTimePasses()
    {
        for (var failure = 1; failure < PeopleDesk.MostFailures; failure++)
        {
            Assert.Null((await _desk.SignInAsync("jo.rivers", "wrong", Token)).LockedUntil);
        }

        Assert.NotNull((await _desk.SignInAsync("jo.rivers", "wrong", Token)).LockedUntil);
        Assert.Null((await _desk.SignInAsync("jo.rivers", Right, Token)).Person);
        _time.Advance(PeopleDesk.LockedFor);
        Assert.NotNull((await _desk.SignInAsync("jo.rivers", Right, Token)).Person);
        var log = await _scratch.Warehouse.ReadAsync(session => ChangeLogStore.ListAsync(session, "person:jo.rivers"), Token);
        Assert.Equal(["person made", "sign-in refused", "sign-in refused", "sign-in refused", "sign-in refused", "locked after failed sign-ins", "signed in"], log.Select(change => change.What));
    }

    [Fact]
    public async Task Failures_AfterTheLockEnded_AreCountedFromOneAgain()
    {
        for (var failure = 0; failure < PeopleDesk.MostFailures; failure++)
        {
            await _desk.SignInAsync("jo.rivers", "wrong", Token);
        }

        _time.Advance(PeopleDesk.LockedFor);

        Assert.Null((await _desk.SignInAsync("jo.rivers", "wrong", Token)).LockedUntil);
        Assert.NotNull((await _desk.SignInAsync("jo.rivers", Right, Token)).Person);
    }

    [Fact]
    public async Task Administrator_WhenTheOnlyOne_StaysOne()
    {
        Assert.StartsWith("'jo.rivers' is the only administrator", await _desk.SetRoleAsync("jo.rivers", Role.Look, closed: false, "test", Token), StringComparison.Ordinal);
        Assert.NotNull(await _desk.SetRoleAsync("jo.rivers", Role.Administer, closed: true, "test", Token));
        Assert.Null(await _desk.AddAsync("sam", Role.Administer, Right, "test", Token));
        Assert.Null(await _desk.SetRoleAsync("jo.rivers", Role.Look, closed: true, "test", Token));
        Assert.Null((await _desk.SignInAsync("jo.rivers", Right, Token)).Person);
    }

    [Theory]
    [InlineData("sam", "too short")]
    [InlineData("sam", "sam sam sam sam")]
    [InlineData("sam", "aaaaaaaaaaaaaaaa")]
    [InlineData("s", Right)]
    [InlineData("<b>sam</b>", Right)]
    [InlineData("JO.RIVERS", Right)]
    public async Task Person_WithABadNameOrPassword_IsNotMade(string name, string password) =>
        Assert.NotNull(await _desk.AddAsync(name, Role.Look, password, "test", Token));
}
