using LabPipeline.Hosting.Settings;
using LabPipeline.Notifier.Settings;
using LabPipeline.Testing;

namespace LabPipeline.Notifier.Tests.Settings;

public sealed class NotifierOptionsValidatorTests : IDisposable
{
    private const string GoodSecret = "whsec_AQIDBAUGBwgJCgsMDQ4PEBESExQVFhcYGRobHB0eHyA=";

    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Validate_WhenNothingIsSet_IsFine() => Assert.Empty(FaultsOf(new NotifierOptions()));

    [Fact]
    public void Validate_WhenEverythingIsRight_IsFine() => Assert.Empty(FaultsOf(Good()));

    [Fact]
    public void Validate_WhenManyThingsAreWrong_SaysAllOfThemAtOnce()
    {
        var options = new NotifierOptions
        {
            SmtpPort = 70000,
            SmtpSecurity = "ssl",
            MailFrom = "nobody",
            SmtpUser = "lab",
            SmtpPasswordVariable = "LABPIPELINE_TEST_NEVER_SET",
            StormMessages = 0,
            StormWindow = TimeSpan.FromMinutes(11),
            StormGathering = TimeSpan.FromMinutes(-1),
            TimeZone = "Atlantis/Centre",
            BoardUrl = "board",
            Emails =
            {
                ["Lab Manager"] = new EmailOptions { To = "manager", Levels = { "alarm" }, Quiet = new QuietHoursOptions { From = "8pm", To = "06:00" }, RemindAfter = TimeSpan.FromMinutes(1), EscalateAfter = TimeSpan.Zero },
                ["technician"] = new EmailOptions { To = "t@lab.example", Quiet = new QuietHoursOptions { From = "06:00", To = "06:00" } },
                ["principal"] = new EmailOptions { To = "p@lab.example", DigestAt = "evening", RemindAfter = TimeSpan.FromHours(1) },
            },
            Webhooks =
            {
                ["a"] = new WebhookOptions { Url = "ftp://hooks.lab.example", SecretVariable = "" },
                ["b"] = new WebhookOptions { Url = "https://other.example", SecretFile = Write("short", "whsec_AAAA") },
                ["c"] = new WebhookOptions { Url = "http://hooks.lab.example", SecretFile = _folder.File("missing") },
            },
            WebhookHosts = { "hooks.lab.example" },
            WebhookPrivateNetworks = { "10.1.2" },
        };

        Assert.Equal(
            [
                "Notifier:SmtpHost is empty; expected the mail server, because Notifier:Emails has entries.",
                "Notifier:SmtpPort is 70000; expected 1 to 65535.",
                "Notifier:SmtpSecurity is 'ssl'; expected starttls, tls or none.",
                "Notifier:MailFrom is 'nobody'; expected an address such as quality@lab.example.",
                "Notifier:SmtpUser is set, but its password is missing: environment variable LABPIPELINE_TEST_NEVER_SET is not set; expected the secret there, or in a file.",
                "Notifier:Emails:Lab Manager:To is 'manager'; expected one address such as manager@lab.example.",
                "Notifier:Emails:Lab Manager has a name that is not 1 to 40 characters of a-z, 0-9 and '-'; expected such as lab-manager.",
                "Notifier:Emails:Lab Manager:Levels has 'alarm'; expected block, hold, note or none.",
                "Notifier:Emails:Lab Manager:RemindAfter is 00:01:00; expected at least 00:10:00.",
                "Notifier:Emails:Lab Manager:EscalateAfter is 00:00:00; expected at least 00:10:00.",
                "Notifier:Emails:Lab Manager:Quiet is from '8pm' to '06:00'; expected times such as 20:00 and 06:30.",
                "Notifier:Emails:technician:Quiet is from '06:00' to '06:00'; expected two different times, or no Quiet.",
                "Notifier:Emails:principal:DigestAt is 'evening'; expected a time such as 16:30, or nothing.",
                "Notifier:Emails:principal has DigestAt together with Quiet, RemindAfter or EscalateAfter; expected one way of waiting. Give the address a second channel for the other.",
                "Notifier:WebhookPrivateNetworks has '10.1.2'; expected a network such as 10.1.2.0/24.",
                "Notifier:Webhooks:a:Url is not an absolute https address without user name; expected such as https://hooks.lab.example/alerts.",
                "Notifier:Webhooks:a: the signing secret is missing: neither a file nor an environment variable is named; expected one of them.",
                "Notifier:Webhooks:b:Url goes to host 'other.example', which is not in Notifier:WebhookHosts; list it there to allow it.",
                "Notifier:Webhooks:b: the signing secret is not written as whsec_ and the base64 of 24 to 64 bytes.",
                "Notifier:Webhooks:c:Url is plain http; expected https, or AllowPlainHttp set to true.",
                $"Notifier:Webhooks:c: the signing secret is missing: file {_folder.File("missing")} cannot be read (FileNotFoundException); expected the secret in it.",
                "Notifier:StormMessages is 0; expected at least 1.",
                "Notifier:StormWindow is 00:11:00; expected more than zero and at most 00:10:00, the time in which every alert is told.",
                "Notifier:StormGathering is -00:01:00; expected at least zero and less than StormWindow, 00:11:00.",
                "Notifier:TimeZone is 'Atlantis/Centre', which this machine does not know; expected a name such as Europe/Berlin.",
                "Notifier:BoardUrl is 'board'; expected an absolute http or https address, or nothing.",
            ],
            FaultsOf(options));
    }

    [Fact]
    public void Validate_WhenAPasswordWouldTravelReadable_Refuses()
    {
        var options = Good();
        options.SmtpSecurity = "none";
        options.SmtpUser = "lab";
        options.SmtpPasswordFile = Write("password", "hunter-seven-42");

        Assert.Equal(
            ["Notifier:SmtpSecurity is none although SmtpUser is set: the password would travel readable; expected starttls or tls."], FaultsOf(options));
    }

    [Theory]
    [Shows(75)]
    [InlineData(UnixFileMode.UserRead | UnixFileMode.UserWrite, true)]
    [InlineData(UnixFileMode.UserRead, true)]
    [InlineData(UnixFileMode.UserRead | UnixFileMode.OtherRead, false)]
    [InlineData(UnixFileMode.UserRead | UnixFileMode.GroupRead, false)]
    [InlineData(UnixFileMode.UserRead | UnixFileMode.OtherWrite, false)]
    public void Read_WhenTheFileIsOpenToOthers_RefusesIt(UnixFileMode mode, bool taken)
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("Windows has no such file modes.");
            return;
        }

        var file = Write("secret", "hunter-seven-42\n");
        File.SetUnixFileMode(file, mode);

        var secret = SecretSource.Read(file, "", out var fault);

        Assert.Equal(taken ? "hunter-seven-42" : null, secret?.Reveal());
        Assert.Equal(taken ? null : $"file {file} can be read or written by others than its owner; run chmod 600 on it.", fault);
    }

    [Fact]
    [Shows(75)]
    public void Secret_WhenPrinted_DoesNotShowItself()
    {
        var secret = new Secret("hunter-seven-42");

        Assert.Equal("(secret)", $"{secret}");
        Assert.Equal("535 bad (secret)", secret.Redact("535 bad hunter-seven-42"));
    }

    private static IEnumerable<string> FaultsOf(NotifierOptions options) => new NotifierOptionsValidator().Validate(null, options).Failures ?? [];

    private NotifierOptions Good() => new()
    {
        SmtpHost = "mail.lab.example",
        MailFrom = "Quality <quality@lab.example>",
        TimeZone = "Europe/Berlin",
        BoardUrl = "https://board.lab.example",
        Emails = { ["lab-manager"] = new EmailOptions { To = "m@lab.example", Levels = { "block" }, Quiet = new QuietHoursOptions { From = "20:00", To = "06:30" } } },
        WebhookHosts = { "hooks.lab.example" },
        WebhookPrivateNetworks = { "10.1.2.0/24" },
        Webhooks = { ["chat"] = new WebhookOptions { Url = "https://hooks.lab.example/x", SecretFile = Write("good", GoodSecret) } },
    };

    private string Write(string name, string text)
    {
        var file = _folder.File(name);
        File.WriteAllText(file, text);
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(file, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        }

        return file;
    }
}
