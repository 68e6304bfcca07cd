using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using LabPipeline.Hosting.Settings;
using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Routing;
using Microsoft.Extensions.Options;
using MimeKit;

namespace LabPipeline.Notifier.Settings;

/// <summary>Says everything that is wrong with the settings at once, each in a line with what was found and what is expected.</summary>
public sealed partial class NotifierOptionsValidator : IValidateOptions<NotifierOptions>
{
    private const int HighestPort = 65535;

    private static readonly TimeSpan ShortestReminder = TimeSpan.FromMinutes(10);

    public ValidateOptionsResult Validate(string? name, NotifierOptions options)
    {
        List<string> faults =
        [
            .. MailFaults(options),
            .. options.Emails.SelectMany(email => EmailFaults(email.Key, email.Value)),
            .. NetworkFaults(options),
            .. options.Webhooks.SelectMany(webhook => WebhookFaults(webhook.Key, webhook.Value, options)),
            .. StormFaults(options),
            .. OtherFaults(options),
        ];
        return faults.Count == 0
            ? ValidateOptionsResult.Success
            : ValidateOptionsResult.Fail(faults.Select(fault => $"{NotifierOptions.Section}:{fault}"));
    }

    /// <summary>The address in <paramref name="text"/>, or null when it is none or has no domain.</summary>
    public static MailboxAddress? AddressOf(string text) =>
        MailboxAddress.TryParse(text, out var address) && address.Domain.Length > 0 && address.LocalPart.Length > 0 ? address : null;

    private static IEnumerable<string> MailFaults(NotifierOptions options)
    {
        if (options.Emails.Count == 0)
        {
            yield break;
        }

        if (string.IsNullOrWhiteSpace(options.SmtpHost))
        {
            yield return "SmtpHost is empty; expected the mail server, because Notifier:Emails has entries.";
        }

        if (options.SmtpPort is < 1 or > HighestPort)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"SmtpPort is {options.SmtpPort}; expected 1 to {HighestPort}.");
        }

        if (SmtpSecurityNames.Find(options.SmtpSecurity) is null)
        {
            yield return $"SmtpSecurity is '{options.SmtpSecurity}'; expected starttls, tls or none.";
        }

        if (options.SmtpSecurity == SmtpSecurityNames.None && options.SmtpUser.Length > 0)
        {
            yield return "SmtpSecurity is none although SmtpUser is set: the password would travel readable; expected starttls or tls.";
        }

        if (AddressOf(options.MailFrom) is null)
        {
            yield return $"MailFrom is '{options.MailFrom}'; expected an address such as quality@lab.example.";
        }

        string? fault = null;
        if (options.SmtpUser.Length > 0 && SecretSource.Read(options.SmtpPasswordFile, options.SmtpPasswordVariable, out fault) is null)
        {
            yield return $"SmtpUser is set, but its password is missing: {fault}";
        }
    }

    private static IEnumerable<string> EmailFaults(string name, EmailOptions email)
    {
        if (AddressOf(email.To) is null)
        {
            yield return $"Emails:{name}:To is '{email.To}'; expected one address such as manager@lab.example.";
        }

        foreach (var fault in ChannelFaults($"Emails:{name}", name, email))
        {
            yield return fault;
        }
    }

    private static IEnumerable<string> NetworkFaults(NotifierOptions options) => options.WebhookPrivateNetworks
        .Where(network => !IPNetwork.TryParse(network, out _))
        .Select(network => $"WebhookPrivateNetworks has '{network}'; expected a network such as 10.1.2.0/24.");

    private static IEnumerable<string> WebhookFaults(string name, WebhookOptions webhook, NotifierOptions options)
    {
        var setting = $"Webhooks:{name}";
        if (!Uri.TryCreate(webhook.Url, UriKind.Absolute, out var url) || url.Scheme is not ("https" or "http") || url.UserInfo.Length > 0)
        {
            yield return $"{setting}:Url is not an absolute https address without user name; expected such as https://hooks.lab.example/alerts.";
        }
        else if (url.Scheme == "http" && !webhook.AllowPlainHttp)
        {
            yield return $"{setting}:Url is plain http; expected https, or AllowPlainHttp set to true.";
        }
        else if (!options.WebhookHosts.Contains(url.IdnHost, StringComparer.OrdinalIgnoreCase))
        {
            yield return $"{setting}:Url goes to host '{url.IdnHost}', which is not in Notifier:WebhookHosts; list it there to allow it.";
        }

        var secret = SecretSource.Read(webhook.SecretFile, webhook.SecretVariable, out var fault);
        if (secret is null)
        {
            yield return $"{setting}: the signing secret is missing: {fault}";
        }
        else if (WebhookSignature.KeyOf(secret.Reveal()) is null)
        {
            yield return $"{setting}: the signing secret is not written as whsec_ and the base64 of 24 to 64 bytes.";
        }

        foreach (var channelFault in ChannelFaults(setting, name, webhook))
        {
            yield return channelFault;
        }
    }

    private static IEnumerable<string> ChannelFaults(string setting, string name, ChannelOptions channel)
    {
        if (!ChannelName().IsMatch(name))
        {
            yield return $"{setting} has a name that is not 1 to 40 characters of a-z, 0-9 and '-'; expected such as lab-manager.";
        }

        foreach (var level in channel.Levels.Where(level => level != ChannelOptions.NoLevel && !AlertLevels.TryParse(level, out _)))
        {
            yield return $"{setting}:Levels has '{level}'; expected block, hold, note or none.";
        }

        if (channel.RemindAfter < ShortestReminder)
        {
            yield return $"{setting}:RemindAfter is {channel.RemindAfter:c}; expected at least {ShortestReminder:c}.";
        }

        if (channel.EscalateAfter < ShortestReminder)
        {
            yield return $"{setting}:EscalateAfter is {channel.EscalateAfter:c}; expected at least {ShortestReminder:c}.";
        }

        foreach (var fault in WaitingFaults(setting, channel))
        {
            yield return fault;
        }
    }

    private static IEnumerable<string> WaitingFaults(string setting, ChannelOptions channel)
    {
        if (channel.DigestAt.Length > 0)
        {
            if (TimeOf(channel.DigestAt) is null)
            {
                yield return $"{setting}:DigestAt is '{channel.DigestAt}'; expected a time such as 16:30, or nothing.";
            }

            if (channel.Quiet is not null || channel.RemindAfter is not null || channel.EscalateAfter is not null)
            {
                yield return $"{setting} has DigestAt together with Quiet, RemindAfter or EscalateAfter; expected one way of waiting. Give the address a second channel for the other.";
            }
        }

        if (channel.Quiet is { } quiet)
        {
            if (TimeOf(quiet.From) is null || TimeOf(quiet.To) is null)
            {
                yield return $"{setting}:Quiet is from '{quiet.From}' to '{quiet.To}'; expected times such as 20:00 and 06:30.";
            }
            else if (TimeOf(quiet.From) == TimeOf(quiet.To))
            {
                yield return $"{setting}:Quiet is from '{quiet.From}' to '{quiet.To}'; expected two different times, or no Quiet.";
            }
        }
    }

    private static IEnumerable<string> StormFaults(NotifierOptions options)
    {
        if (options.StormMessages < 1)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"StormMessages is {options.StormMessages}; expected at least 1.");
        }

        if (options.StormWindow <= TimeSpan.Zero || options.StormWindow > TimeSpan.FromMinutes(10))
        {
            yield return $"StormWindow is {options.StormWindow:c}; expected more than zero and at most 00:10:00, the time in which every alert is told.";
        }

        if (options.StormGathering < TimeSpan.Zero || options.StormGathering >= options.StormWindow)
        {
            yield return $"StormGathering is {options.StormGathering:c}; expected at least zero and less than StormWindow, {options.StormWindow:c}.";
        }
    }

    private static IEnumerable<string> OtherFaults(NotifierOptions options)
    {
        if (!TimeZoneInfo.TryFindSystemTimeZoneById(options.TimeZone, out _))
        {
            yield return $"TimeZone is '{options.TimeZone}', which this machine does not know; expected a name such as Europe/Berlin.";
        }

        if (options.BoardUrl.Length > 0 && !(Uri.TryCreate(options.BoardUrl, UriKind.Absolute, out var board) && board.Scheme is "http" or "https"))
        {
            yield return $"BoardUrl is '{options.BoardUrl}'; expected an absolute http or https address, or nothing.";
        }
    }

    /// <summary>A time of day written <c>HH:mm</c>, or null.</summary>
    internal static TimeOnly? TimeOf(string text) =>
        TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time) ? time : null;

    [GeneratedRegex("^[a-z0-9-]{1,40}$")]
    private static partial Regex ChannelName();
}
