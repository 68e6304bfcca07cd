using LabPipeline.Warehouse.Dialects;

namespace LabPipeline.Hosting.Tests.Settings;

/// <summary>What would damage an embedded warehouse is refused before anything is opened.</summary>
public sealed class WarehousePlaceTests
{
    [Fact]
    [Shows(56)]
    public void Warehouse_OnANetworkShare_IsRefusedWithWhatToDo()
    {
        var refusal = Assert.Throws<InvalidOperationException>(() => WarehousePlace.AssertLocal("share", DriveType.Network));

        Assert.Contains("on a network share; expected a disk of this computer", refusal.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(DriveType.Fixed)]
    [InlineData(DriveType.Removable)]
    [InlineData(DriveType.Ram)]
    [InlineData(DriveType.Unknown)]
    public void Warehouse_OnADiskOfThisComputer_IsAccepted(DriveType drive) => WarehousePlace.AssertLocal("disk", drive);

    // sqlite.org/wal.html names 3.7.0 to 3.51.2 as affected by the WAL-reset fault.
    [Theory]
    [Shows(54)]
    [InlineData("3.40.1", false)]
    [InlineData("3.51.2", false)]
    [InlineData("3.51.3", true)]
    [InlineData("3.53.3", true)]
    public void Sqlite_WhenItsVersionHasTheWalResetFault_IsRefused(string version, bool safe)
    {
        var refusal = Record.Exception(() => SqliteDialect.AssertSafe(version));

        Assert.Equal(safe, refusal is null);
    }
}
