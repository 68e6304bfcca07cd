using System.Globalization;
using System.Text.Json;
using LabPipeline.Notifier.Routing;

namespace LabPipeline.Notifier.Messages;

/// <summary>A notice as a program reads it: one JSON object without line breaks, the same in the alert file and in a webhook.</summary>
public static class NoticeJson
{
    public static byte[] Write(Notice notice)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            json.WriteString("type", TypeOf(notice));
            json.WriteString("timestamp", notice.At.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ss.fffZ", CultureInfo.InvariantCulture));
            json.WriteStartObject("data");
            json.WriteString("id", notice.Id);
            WriteData(json, notice);
            json.WriteEndObject();
            json.WriteEndObject();
        }

        return stream.ToArray();
    }

    private static string TypeOf(Notice notice) => notice switch
    {
        AlertNotice alert => "alert." + alert.Event,
        TestNotice => "channel.test",
        _ => "alert.digest",
    };

    private static void WriteData(Utf8JsonWriter json, Notice notice)
    {
        switch (notice)
        {
            case AlertNotice alert:
                WriteAlert(json, alert);
                break;
            case TestNotice test:
                json.WriteString("channel", test.Channel);
                json.WriteString("askedBy", test.AskedBy);
                break;
            default:
                WriteDigest(json, (DigestNotice)notice);
                break;
        }
    }

    private static void WriteAlert(Utf8JsonWriter json, AlertNotice alert)
    {
        json.WriteNumber("alert", alert.AlertId);
        json.WriteNumber("timesRaised", alert.TimesRaised);
        json.WriteString("level", AlertLevels.NameOf(alert.Level));
        json.WriteString("rule", alert.Rule);
        WriteIfAny(json, "sample", alert.Barcode);
        WriteIfAny(json, "trial", alert.TrialCode);
        if (alert.PullNo is { } pull)
        {
            json.WriteNumber("pull", pull);
        }

        json.WriteString("headline", alert.Headline);
        json.WriteString("advice", alert.Advice);
        json.WriteStartArray("facts");
        foreach (var fact in alert.Facts)
        {
            json.WriteStartObject();
            json.WriteString("name", fact.Name);
            json.WriteString("value", fact.Value);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        WriteIfAny(json, "notDeliveredOn", alert.MissingOn);
    }

    private static void WriteDigest(Utf8JsonWriter json, DigestNotice digest)
    {
        WriteIfAny(json, "day", digest.Day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        json.WriteNumber("total", digest.Total);
        json.WriteNumber("blocks", digest.Blocks);
        json.WriteNumber("firstAlert", digest.FirstAlertId);
        json.WriteNumber("lastAlert", digest.LastAlertId);
        json.WriteStartArray("alerts");
        foreach (var line in digest.Lines)
        {
            json.WriteStartObject();
            json.WriteNumber("alert", line.AlertId);
            json.WriteString("label", line.Label);
            json.WriteString("headline", line.Headline);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteIfAny(Utf8JsonWriter json, string name, string? value)
    {
        if (value is not null)
        {
            json.WriteString(name, value);
        }
    }
}
