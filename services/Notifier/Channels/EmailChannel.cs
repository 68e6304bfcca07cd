using System.Globalization;
using LabPipeline.Notifier.Messages;
using LabPipeline.Notifier.Routing;
using MailKit.Net.Smtp;
using MimeKit;
using MimeKit.Text;

namespace LabPipeline.Notifier.Channels;

/// <summary>E-mail to one address. One address a channel, so that a bad one never stands in the way of another.</summary>
/// <remarks>
/// When the line breaks between the final dot of DATA and the server's answer, nobody can know whether the mail was taken
/// (RFC 1047). It is then sent again under the same Message-ID: a duplicate is preferred to silence.
/// </remarks>
public sealed class EmailChannel(ChannelPolicy policy, SmtpTarget target, MailboxAddress to, string? boardUrl) : IAlertChannel
{
    private const int FirstPermanentCode = 500;

    public ChannelPolicy Policy => policy;

    public async Task<SendOutcome> SendAsync(IReadOnlyList<Notice> notices, CancellationToken cancellationToken)
    {
        using var message = Compose(notices[0]);
        using var client = new SmtpClient();
        try
        {
            await client.ConnectAsync(target.Host, target.Port, target.Security, cancellationToken).ConfigureAwait(false);
            if (target.User is { } user)
            {
                await client.AuthenticateAsync(user, target.Password?.Reveal() ?? "", cancellationToken).ConfigureAwait(false);
            }
        }
        catch (Exception exception) when (exception is not OperationCanceledException)
        {
            // Greeting, encryption and log-in concern the server as a whole: repairing them delivers what waits.
            return SendOutcome.TryLater(Describe(exception));
        }

        try
        {
            await client.SendAsync(message, cancellationToken).ConfigureAwait(false);
        }
        catch (SmtpCommandException exception) when ((int)exception.StatusCode >= FirstPermanentCode)
        {
            return SendOutcome.Refused(Describe(exception));
        }
        catch (Exception exception) when (exception is not OperationCanceledException)
        {
            return SendOutcome.TryLater(Describe(exception));
        }

        // The mail is the server's already. The client keeps a farewell that fails to itself, so that it sends nothing a second time.
        await client.DisconnectAsync(quit: true, cancellationToken).ConfigureAwait(false);
        return SendOutcome.Sent;
    }

    private MimeMessage Compose(Notice notice)
    {
        var letter = AlertLetter.Write(notice, boardUrl);
        var message = new MimeMessage
        {
            Subject = letter.Subject,
            MessageId = $"{notice.Id}@{target.From.Domain}",
            Date = notice.At,
            Body = new MultipartAlternative
            {
                new TextPart(TextFormat.Plain) { Text = letter.Text },
                new TextPart(TextFormat.Html) { Text = letter.Html },
            },
        };
        message.From.Add(target.From);
        message.To.Add(to);

        // RFC 3834: keeps holiday notices and mailing robots from answering.
        message.Headers.Add(HeaderId.AutoSubmitted, "auto-generated");
        return message;
    }

    private string Describe(Exception exception)
    {
        var what = exception is SmtpCommandException command
            ? $"answered {((int)command.StatusCode).ToString(CultureInfo.InvariantCulture)} {command.Message}"
            : exception.Message;
        var text = $"{target.Host}:{target.Port.ToString(CultureInfo.InvariantCulture)}: {what}";
        return target.Password?.Redact(text) ?? text;
    }
}
