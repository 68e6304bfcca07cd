using LabPipeline.Hosting;
using LabPipeline.Intake.Text;
using NodaTime;

namespace LabPipeline.Intake.Profiles;

/// <summary>Reads "time".</summary>
internal static class TimeSection
{
    public static TimeRule Read(ProfileNode node)
    {
        var columns = node.Texts("columns", required: true);
        var formats = Formats(node);
        var rule = new TimeRule(
            columns,
            formats,
            Zone(node, formats.Count > 0 && formats.All(format => format.StatesOffset)),
            node.Choice("ambiguous", ProfileWords.AmbiguousTimes, AmbiguousTime.Refuse),
            node.Flag("required", true));
        node.Close();
        return rule;
    }

    private static List<TimestampPattern> Formats(ProfileNode node)
    {
        var patterns = new List<TimestampPattern>();
        var texts = node.Texts("formats", required: true);
        for (var index = 0; index < texts.Count; index++)
        {
            if (TimestampPattern.Compile(texts[index], out var fault) is { } pattern)
            {
                patterns.Add(pattern);
            }
            else
            {
                node.Fault($"formats[{index}]", $"'{VisibleText.Of(texts[index])}': {fault}", "a format such as yyyy-MM-dd HH:mm:ss");
            }
        }

        return patterns;
    }

    private static DateTimeZone Zone(ProfileNode node, bool offsetsStated)
    {
        var name = offsetsStated ? node.OptionalText("zone") : node.Text("zone");
        if (string.IsNullOrEmpty(name))
        {
            return DateTimeZone.Utc;
        }

        var zone = DateTimeZoneProviders.Tzdb.GetZoneOrNull(name);
        if (zone is null)
        {
            node.Fault("zone", $"'{VisibleText.Of(name)}'", "a time zone name such as Europe/Berlin or America/Chicago");
        }

        return zone ?? DateTimeZone.Utc;
    }
}
