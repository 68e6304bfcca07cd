using System.Net;
using LabPipeline.Hosting.Settings;
using LabPipeline.Notifier.Routing;
using LabPipeline.Notifier.Settings;
using LabPipeline.Notifier.Storms;

namespace LabPipeline.Notifier.Channels;

/// <summary>Builds the channels the validated settings describe.</summary>
public sealed class ChannelFactory(NotifierOptions options, string dataFolder, IHostResolver resolver, TimeProvider time)
{
    private static readonly TimeSpan FileTimeout = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan EmailTimeout = TimeSpan.FromSeconds(60);
    private static readonly TimeSpan WebhookTimeout = TimeSpan.FromSeconds(10);

    // Five hundred rows of bounded text are ten megabytes at most; SQL Server takes no more than 2100 parameters.
    private const int FileBatch = 500;

    public IReadOnlyList<IAlertChannel> Create() =>
    [
        AlertFile(),
        .. options.Emails.Select(email => Email(email.Key, email.Value)),
        .. options.Webhooks.Select(webhook => Webhook(webhook.Key, webhook.Value)),
    ];

    private AlertFileChannel AlertFile() => new(
        new ChannelPolicy
        {
            Name = AlertFileChannel.Name,
            Levels = new HashSet<AlertLevel>(Enum.GetValues<AlertLevel>()),
            IsCompleteRecord = true,
            BatchSize = FileBatch,
            Timeout = FileTimeout,
        },
        Path.Combine(Path.GetFullPath(dataFolder), AlertFileChannel.FileName));

    private EmailChannel Email(string name, EmailOptions email) => new(
        PolicyOf("email:" + name, email, EmailTimeout),
        new SmtpTarget
        {
            Host = options.SmtpHost,
            Port = options.SmtpPort,
            Security = SmtpSecurityNames.Find(options.SmtpSecurity)!.Value,
            From = NotifierOptionsValidator.AddressOf(options.MailFrom)!,
            User = options.SmtpUser.Length > 0 ? options.SmtpUser : null,
            Password = options.SmtpUser.Length > 0 ? SecretSource.Read(options.SmtpPasswordFile, options.SmtpPasswordVariable, out _) : null,
        },
        NotifierOptionsValidator.AddressOf(email.To)!,
        options.BoardUrl.Length > 0 ? options.BoardUrl : null);

    private WebhookChannel Webhook(string name, WebhookOptions webhook)
    {
        var connection = new GuardedConnection(
            new HashSet<string>(options.WebhookHosts, StringComparer.OrdinalIgnoreCase),
            new AddressGuard([.. options.WebhookPrivateNetworks.Select(IPNetwork.Parse)]),
            resolver);
        var secret = SecretSource.Read(webhook.SecretFile, webhook.SecretVariable, out _)!;
        return new WebhookChannel(
            PolicyOf("webhook:" + name, webhook, WebhookTimeout),
            new Uri(webhook.Url),
            WebhookSignature.KeyOf(secret.Reveal())!,
            connection.CreateClient(),
            time);
    }

    private ChannelPolicy PolicyOf(string name, ChannelOptions channel, TimeSpan timeout) => new()
    {
        Name = name,
        Levels = channel.Levels.Count == 0
            ? new HashSet<AlertLevel> { AlertLevel.Block, AlertLevel.Hold }
            : new HashSet<AlertLevel>(channel.Levels.Where(level => level != ChannelOptions.NoLevel).Select(AlertLevels.Parse)),
        Quiet = channel.Quiet is { } quiet
            ? new QuietHours(
                NotifierOptionsValidator.TimeOf(quiet.From)!.Value,
                NotifierOptionsValidator.TimeOf(quiet.To)!.Value,
                TimeZoneInfo.FindSystemTimeZoneById(options.TimeZone))
            : null,
        Digest = channel.DigestAt.Length > 0
            ? new DailyDigest(NotifierOptionsValidator.TimeOf(channel.DigestAt)!.Value, TimeZoneInfo.FindSystemTimeZoneById(options.TimeZone))
            : null,
        Storm = new StormLimits { Immediate = options.StormMessages, Window = options.StormWindow, GatherFor = options.StormGathering },
        Timeout = timeout,
        RemindAfter = channel.RemindAfter,
        EscalateAfter = channel.EscalateAfter,
    };
}
