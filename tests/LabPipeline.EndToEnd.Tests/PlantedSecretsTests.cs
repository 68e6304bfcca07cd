using System.Text;
using LabPipeline.EndToEnd.Tests.Crashes;
using LabPipeline.Testing;

namespace LabPipeline.EndToEnd.Tests;

/// <summary>Passwords are planted wherever a laboratory may set one, every connection that needs them fails, and nothing the programs leave behind holds them.</summary>
public sealed class PlantedSecretsTests
{
    private const string Password = "Planted-Zebra-4471";
    private const string WebhookSecret = "whsec_UGxhbnRlZC1aZWJyYS00NDcxLVBsYW50ZWQtWmVicmE=";

    // Nobody listens there: port 1 (tcpmux) is closed on every machine of today.
    private const string DeadPort = "1";

    private static readonly string[] Planted = [Password, WebhookSecret, "UGxhbnRlZC1aZWJyYS"];

    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(3);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(75)]
    public async Task Station_WhenMailAndWebhookFail_NamesNoSecretAnywhere()
    {
        using var lab = await CrashLab.CreateAsync(new SmallSeason(1), Stop);
        lab.DropNext();
        var settings = new Dictionary<string, string>
        {
            ["Intake__ScanInterval"] = "00:00:00.2",
            ["Lab__LogToConsole"] = "true",
            ["Notifier__SmtpHost"] = "127.0.0.1",
            ["Notifier__SmtpPort"] = DeadPort,
            ["Notifier__SmtpUser"] = "lab",
            ["Notifier__MailFrom"] = "lab@lab.example",
            ["Notifier__Emails__technician__To"] = "technician@lab.example",
            ["LABPIPELINE_SMTP_PASSWORD"] = Password,
            ["Notifier__Webhooks__log__Url"] = $"https://127.0.0.1:{DeadPort}/alerts",
            ["Notifier__Webhooks__log__SecretVariable"] = "PLANTED_WEBHOOK_SECRET",
            ["Notifier__WebhookHosts__0"] = "127.0.0.1",
            ["Notifier__WebhookPrivateNetworks__0"] = "127.0.0.0/8",
            ["PLANTED_WEBHOOK_SECRET"] = WebhookSecret,
        };
        using var station = ProductProcess.Start("Station", settings, ["run", "--without-board", "--data", lab.Path]);
        var end = DateTime.UtcNow + LongestWait;
        while (!await TriedAsync(lab.Path))
        {
            Assert.True(DateTime.UtcNow < end, "Mail and webhook were not both tried in time.");
            Assert.False(station.HasExited);
            await Task.Delay(200, Stop);
        }

        Assert.Equal(0, await station.StopAsync(Stop));
        var (_, output, errors) = await station.FinishAsync(Stop);
        AssertClean("what it printed", output + errors);
        AssertCleanFolder(lab.Path);
    }

    [Theory]
    [Shows(75)]
    [InlineData("rabbitmq", "BusDown")]
    [InlineData("sqlserver", "does not start")]
    public async Task Service_WhenBrokerOrDatabaseRefuseIt_NamesNoSecretAnywhere(string unreachable, string said)
    {
        using var folder = new ScratchFolder();
        var settings = new Dictionary<string, string> { ["Lab__DataFolder"] = folder.Path, ["Lab__LogToConsole"] = "true" };
        if (unreachable == "rabbitmq")
        {
            settings["Lab__Bus"] = "rabbitmq";
            settings["Lab__Rabbit__Host"] = "127.0.0.1";
            settings["Lab__Rabbit__Port"] = DeadPort;
            settings["Lab__Rabbit__User"] = "lab";
            settings["Lab__Rabbit__PasswordVariable"] = "PLANTED_RABBIT_PASSWORD";
            settings["PLANTED_RABBIT_PASSWORD"] = Password;
        }
        else
        {
            settings["Lab__Warehouse"] = "sqlserver";
            settings["Lab__SqlServer__ConnectionString"] = $"Server=127.0.0.1,{DeadPort};Database=Lab;User ID=lab;Password={Password};Encrypt=False;Connect Timeout=2";
        }

        using var service = ProductProcess.Start("Quality", settings, []);
        var finished = service.FinishAsync(Stop);
        var end = DateTime.UtcNow + LongestWait;
        while (!service.HasExited && !await LogHoldsAsync(folder.Path, said))
        {
            Assert.True(DateTime.UtcNow < end, $"It did not say '{said}' in time.");
            await Task.Delay(200, Stop);
        }

        if (!service.HasExited)
        {
            await service.StopAsync(Stop);
        }

        var (_, output, errors) = await finished;
        Assert.Contains(said, output + errors, StringComparison.Ordinal);
        AssertClean("what it printed", output + errors);
        AssertCleanFolder(folder.Path);
    }

    private static async Task<bool> TriedAsync(string folder) =>
        (await WarehouseContents.ReadAsync(folder))["deliveries"].Count >= 3 && await LogHoldsAsync(folder, "email:technician") && await LogHoldsAsync(folder, "webhook:log");

    private static async Task<bool> LogHoldsAsync(string folder, string text)
    {
        var logs = Path.Combine(folder, "logs");
        foreach (var file in Directory.Exists(logs) ? Directory.EnumerateFiles(logs) : [])
        {
            await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var reader = new StreamReader(stream);
            if ((await reader.ReadToEndAsync(Stop)).Contains(text, StringComparison.Ordinal))
            {
                return true;
            }
        }

        return false;
    }

    private static void AssertCleanFolder(string folder)
    {
        // Latin-1 keeps every byte, so the database and its journal can be searched like a text.
        foreach (var file in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
        {
            AssertClean(Path.GetFileName(file), File.ReadAllText(file, Encoding.Latin1));
        }
    }

    private static void AssertClean(string what, string text)
    {
        foreach (var secret in Planted)
        {
            Assert.False(text.Contains(secret, StringComparison.Ordinal), $"{what} holds a planted secret.");
        }
    }
}
