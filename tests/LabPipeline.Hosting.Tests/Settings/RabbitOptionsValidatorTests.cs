using LabPipeline.Hosting.Bus;
using LabPipeline.Hosting.Bus.Rabbit;
using LabPipeline.Testing;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Options;

namespace LabPipeline.Hosting.Tests.Settings;

/// <summary>Wrong settings stop the process before it touches anything, with every fault at once.</summary>
public sealed class RabbitOptionsValidatorTests
{
    [Fact]
    public void Validate_WhenTheBusIsInProcess_AsksForNothing() =>
        Assert.True(Validate(new RabbitOptions(), BusNames.InProcess).Succeeded);

    [Fact]
    public void Validate_WhenEverythingIsWrong_SaysItAllAtOnce()
    {
        var options = new RabbitOptions { Host = "amqp://broker", Port = 70000, VirtualHost = "", TlsServerName = "broker.lab.example" };

        Assert.Equal(
            [
                "Lab:Rabbit:Host is 'amqp://broker'; expected the broker's name or address alone, such as broker.lab.example.",
                "Lab:Rabbit:Port is 70000; expected 1 to 65535, or 0 for the usual one.",
                "Lab:Rabbit:VirtualHost is empty; expected / or the name of a virtual host of the broker.",
                "Lab:Rabbit:User is empty; expected the broker's user for this laboratory.",
                "Lab:Rabbit:PasswordFile, PasswordVariable: neither a file nor an environment variable is named; expected one of them.",
                "Lab:Rabbit:TlsServerName is 'broker.lab.example' although Tls is off; expected Tls on, or no name.",
            ],
            Validate(options, BusNames.RabbitMq).Failures);
    }

    [Fact]
    public void Validate_WhenOthersCanReadThePasswordFile_IsRefusedWithTheCure()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "file modes are a Unix matter");
        using var folder = new ScratchFolder();
        File.WriteAllText(folder.File("password"), "north-field-7");
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(folder.File("password"), UnixFileMode.UserRead | UnixFileMode.GroupRead);
        }

        var failure = Assert.Single(Validate(new RabbitOptions { User = "lab", PasswordFile = folder.File("password") }, BusNames.RabbitMq).Failures!);

        Assert.Contains("chmod 600", failure, StringComparison.Ordinal);
        Assert.DoesNotContain("north-field-7", failure, StringComparison.Ordinal);
    }

    // The ports registered with IANA for "amqp" and "amqps".
    [Theory]
    [InlineData(false, 0, 5672)]
    [InlineData(true, 0, 5671)]
    [InlineData(true, 5000, 5000)]
    public void Port_WhenNotGiven_IsTheUsualOne(bool tls, int port, int expected) =>
        Assert.Equal(expected, new RabbitOptions { Tls = tls, Port = port }.EffectivePort);

    [Fact]
    [Shows(79)]
    public async Task Host_WhenSettingsAreWrong_NamesTheFaultsOfAllSectionsBeforeAnythingIsMade()
    {
        using var folder = new ScratchFolder();
        var builder = Host.CreateApplicationBuilder();
        builder.Configuration.AddInMemoryCollection(new Dictionary<string, string?> { ["Lab:DataFolder"] = folder.File("data"), ["Lab:Bus"] = "rabbitmq" });
        builder.Services.AddOptions<OtherOptions>().Validate(_ => false, "Another:Section is wrong too.").ValidateOnStart();
        LabHost.Compose(builder);
        using var host = builder.Build();

        var exception = await Assert.ThrowsAsync<OptionsValidationException>(() => LabHost.PrepareAsync(host.Services, TestContext.Current.CancellationToken));

        Assert.Contains(exception.Failures, failure => failure.StartsWith("Lab:Rabbit:User is empty", StringComparison.Ordinal));
        Assert.Contains("Another:Section is wrong too.", exception.Failures);
        Assert.False(Directory.Exists(folder.File("data")));
    }

    [Fact]
    public void Bus_WhenItsNameIsNone_SaysWhatIsExpected() => Assert.Equal(
        ["Lab:Bus is 'carrier pigeon'; expected in-process or rabbitmq."],
        new LabOptionsValidator().Validate(null, new LabOptions { Bus = "carrier pigeon" }).Failures);

    private static ValidateOptionsResult Validate(RabbitOptions options, string bus) =>
        new RabbitOptionsValidator(new ConfigurationBuilder().AddInMemoryCollection([new("Lab:Bus", bus)]).Build()).Validate(null, options);

    private sealed class OtherOptions;
}
