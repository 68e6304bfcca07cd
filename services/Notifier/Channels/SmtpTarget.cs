using LabPipeline.Hosting.Settings;
using MailKit.Security;
using MimeKit;

namespace LabPipeline.Notifier.Channels;

/// <summary>The mail server and how to speak with it.</summary>
public sealed record SmtpTarget
{
    public required string Host { get; init; }

    public required int Port { get; init; }

    public required SecureSocketOptions Security { get; init; }

    public required MailboxAddress From { get; init; }

    /// <summary>Null where the server asks for no name.</summary>
    public string? User { get; init; }

    public Secret? Password { get; init; }
}
