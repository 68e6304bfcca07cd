namespace LabPipeline.Notifier.Settings;

/// <summary>Whom to tell of alerts. Without any settings, alerts go to the alert file in the data folder.</summary>
public sealed class NotifierOptions
{
    public const string Section = "Notifier";

    /// <summary>Mail server. Needed when <see cref="Emails"/> has entries.</summary>
    public string SmtpHost { get; set; } = "";

    /// <summary>Default 587, the submission port.</summary>
    public int SmtpPort { get; set; } = 587;

    /// <summary><c>starttls</c> (default), <c>tls</c> from the first byte, or <c>none</c> for a server on this machine.</summary>
    public string SmtpSecurity { get; set; } = SmtpSecurityNames.StartTls;

    /// <summary>Name to log in with. Default none: no log-in.</summary>
    public string SmtpUser { get; set; } = "";

    /// <summary>File with the password; readable by its owner only.</summary>
    public string SmtpPasswordFile { get; set; } = "";

    /// <summary>Environment variable with the password. Not used when <see cref="SmtpPasswordFile"/> is set.</summary>
    public string SmtpPasswordVariable { get; set; } = "LABPIPELINE_SMTP_PASSWORD";

    /// <summary>Address mails come from. Needed when <see cref="Emails"/> has entries.</summary>
    public string MailFrom { get; set; } = "";

    /// <summary>E-mail channels by name, such as <c>lab-manager</c>.</summary>
    public IDictionary<string, EmailOptions> Emails { get; } = new Dictionary<string, EmailOptions>(StringComparer.Ordinal);

    /// <summary>Webhook channels by name.</summary>
    public IDictionary<string, WebhookOptions> Webhooks { get; } = new Dictionary<string, WebhookOptions>(StringComparer.Ordinal);

    /// <summary>Hosts webhooks may be sent to. Default none.</summary>
    public IList<string> WebhookHosts { get; } = [];

    /// <summary>Networks inside, such as <c>10.1.2.0/24</c>, that webhook hosts may be found in. Default none: public addresses only.</summary>
    public IList<string> WebhookPrivateNetworks { get; } = [];

    /// <summary>Messages a channel gets one by one within <see cref="StormWindow"/>; the rest goes as a digest. Default 20.</summary>
    public int StormMessages { get; set; } = 20;

    /// <summary>Default 10 minutes.</summary>
    public TimeSpan StormWindow { get; set; } = TimeSpan.FromMinutes(10);

    /// <summary>How long the rest gathers before its digest goes. Default 2 minutes; less than <see cref="StormWindow"/>.</summary>
    public TimeSpan StormGathering { get; set; } = TimeSpan.FromMinutes(2);

    /// <summary>The laboratory's time zone, such as <c>Europe/Berlin</c>; used for quiet hours. Default UTC.</summary>
    public string TimeZone { get; set; } = "UTC";

    /// <summary>Address of the board, put into mails. Default none.</summary>
    public string BoardUrl { get; set; } = "";
}
