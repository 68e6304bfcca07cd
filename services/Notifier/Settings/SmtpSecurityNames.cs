using MailKit.Security;

namespace LabPipeline.Notifier.Settings;

/// <summary>The words for how the line to the mail server is protected.</summary>
public static class SmtpSecurityNames
{
    public const string StartTls = "starttls";

    public const string Tls = "tls";

    public const string None = "none";

    /// <summary>Null for an unknown word. <c>starttls</c> never falls back to an open line.</summary>
    public static SecureSocketOptions? Find(string name) => name switch
    {
        StartTls => SecureSocketOptions.StartTls,
        Tls => SecureSocketOptions.SslOnConnect,
        None => SecureSocketOptions.None,
        _ => null,
    };
}
