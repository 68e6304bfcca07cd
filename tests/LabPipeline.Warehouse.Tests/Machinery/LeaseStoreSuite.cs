using System.Diagnostics;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Warehouse.Tests.Machinery;

/// <summary>Only one may act, and a killed process does not keep its successor waiting.</summary>
public abstract class LeaseStoreSuite(DialectName store)
{
    private static readonly DateTimeOffset Now = new(2026, 1, 14, 8, 0, 0, TimeSpan.Zero);
    private static readonly TimeSpan Length = TimeSpan.FromSeconds(30);

    [Fact]
    public async Task Lease_WhileAnotherHoldsIt_IsNotGiven()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);

        Assert.True(await TryAsync(scratch, "one", Now));
        Assert.False(await TryAsync(scratch, "two", Now + TimeSpan.FromSeconds(29)));
    }

    [Fact]
    public async Task Lease_WhenItExpired_IsGivenToTheNext()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        await TryAsync(scratch, "one", Now);

        Assert.True(await TryAsync(scratch, "two", Now + Length));
        Assert.False(await TryAsync(scratch, "one", Now + Length));
    }

    [Fact]
    public async Task Lease_WhenItsHolderRenews_StaysWithIt()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        await TryAsync(scratch, "one", Now);

        Assert.True(await TryAsync(scratch, "one", Now + TimeSpan.FromSeconds(20)));
        Assert.False(await TryAsync(scratch, "two", Now + TimeSpan.FromSeconds(40)));
    }

    [Fact]
    [Shows(28)]
    public async Task Lease_WhenItsHolderWasAProcessHereThatEnded_IsGivenAtOnce()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        using var process = Process.Start("dotnet", "--version");
        var holder = LeaseHolder.ThisProcess.Split('/');
        holder[1] = process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        await TryAsync(scratch, string.Join('/', holder), Now);

        Assert.True(await TryAsync(scratch, LeaseHolder.ThisProcess, Now));
    }

    [Fact]
    public void Holder_WhenItIsThisProcess_HasNotEnded() => Assert.False(LeaseHolder.HasEnded(LeaseHolder.ThisProcess));

    [Fact]
    public void Holder_WhenItsNumberWasUsedAgain_HasEnded()
    {
        var holder = LeaseHolder.ThisProcess.Split('/');

        Assert.True(LeaseHolder.HasEnded($"{holder[0]}/{holder[1]}/20000101T000000"));
    }

    [Fact]
    public void Holder_WhenItIsAnotherMachine_IsNotPresumedEnded() => Assert.False(LeaseHolder.HasEnded("elsewhere/1/20000101T000000"));

    private static Task<bool> TryAsync(ScratchWarehouse scratch, string holder, DateTimeOffset now) => scratch.Warehouse.WriteAsync(
        session => LeaseStore.TryHoldAsync(session, "folder", holder, now, now + Length), TestContext.Current.CancellationToken);
}
