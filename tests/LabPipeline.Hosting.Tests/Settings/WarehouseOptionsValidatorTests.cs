using LabPipeline.Testing;
using Microsoft.Data.SqlClient;

namespace LabPipeline.Hosting.Tests.Settings;

/// <summary>A wrong way to the warehouse is said in one clear line before anything starts, and never with the password.</summary>
public sealed class WarehouseOptionsValidatorTests
{
    private const string Good = "Server=db.lab.example,1433;Database=LabPipeline;User ID=lab;Password=hush-hush";

    [Fact]
    public void Warehouse_WhenNothingIsSet_IsSqlite() => Assert.Empty(FaultsOf(new WarehouseOptions()));

    [Theory]
    [InlineData("oracle", "Lab:Warehouse is 'oracle'; expected sqlite or sqlserver.")]
    [InlineData("", "Lab:Warehouse is ''; expected sqlite or sqlserver.")]
    public void Warehouse_WhenItIsNeither_IsRefused(string name, string expected) => Assert.Equal([expected], FaultsOf(new WarehouseOptions { Warehouse = name }));

    [Theory]
    [InlineData(Good, null)]
    [InlineData(Good + ";TrustServerCertificate=True", null)]
    [InlineData("", "neither ConnectionString nor ConnectionStringFile")]
    [InlineData("Server=a;Database=b;Colour=hush-hush", "cannot be understood")]
    [InlineData("Database=LabPipeline;Password=hush-hush", "names no server")]
    [InlineData("Server=db;Password=hush-hush", "names no database")]
    [InlineData(Good + ";Encrypt=False", "turns encryption off (Encrypt=False) for server db.lab.example,1433")]
    [InlineData("Server=127.0.0.1,1433;Database=LabPipeline;Password=hush-hush;Encrypt=False", null)]
    [InlineData(Good + ";Server Certificate=no-such-file.cer", "names the server certificate no-such-file.cer, and there is no such file")]
    public void ConnectionString_WhenChecked_IsTakenOrSaysWhatIsWrong(string text, string? expected)
    {
        var faults = FaultsOf(WithSqlServer(text));

        if (expected is null)
        {
            Assert.Empty(faults);
        }
        else
        {
            var fault = Assert.Single(faults);
            Assert.Contains(expected, fault, StringComparison.Ordinal);
            Assert.DoesNotContain("hush", fault, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void ConnectionString_WhenTakenFromAFileOfItsOwner_IsEncryptedAndHasTheTimeLimit()
    {
        using var folder = new ScratchFolder();
        var file = FileWith(folder, UnixFileMode.UserRead);
        var options = new SqlServerOptions { ConnectionStringFile = file, CommandTimeoutSeconds = 45 };

        var builder = new SqlConnectionStringBuilder(SqlServerConnection.Read(options, out var faults));

        Assert.Empty(faults);
        Assert.Equal((SqlConnectionEncryptOption.Mandatory, false, 45), (builder.Encrypt, builder.TrustServerCertificate, builder.CommandTimeout));
    }

    [Fact]
    public void ConnectionString_WhenOthersCanReadItsFile_IsRefused()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has access lists instead of modes.");
        using var folder = new ScratchFolder();
        var file = FileWith(folder, UnixFileMode.UserRead | UnixFileMode.GroupRead);
        var options = new WarehouseOptions { Warehouse = "sqlserver", SqlServer = { ConnectionStringFile = file } };

        Assert.Contains("run chmod 600", Assert.Single(FaultsOf(options)), StringComparison.Ordinal);
    }

    [Fact]
    public void Faults_WhenThereAreSeveral_AreSaidTogether() => Assert.Equal(
        2, FaultsOf(new WarehouseOptions { Warehouse = "sqlserver", SqlServer = { ConnectionString = "Server=db", CommandTimeoutSeconds = 0 } }).Count);

    private static WarehouseOptions WithSqlServer(string text) => new() { Warehouse = "SqlServer", SqlServer = { ConnectionString = text } };

    private static IReadOnlyList<string> FaultsOf(WarehouseOptions options) =>
        [.. new WarehouseOptionsValidator().Validate(null, options).Failures ?? []];

    private static string FileWith(ScratchFolder folder, UnixFileMode mode)
    {
        var file = folder.File("connection");
        File.WriteAllText(file, Good + "\n");
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(file, mode);
        }

        return file;
    }
}
