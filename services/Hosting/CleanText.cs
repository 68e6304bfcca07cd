using System.Globalization;
using System.Text;
using Serilog.Core;
using Serilog.Events;

namespace LabPipeline.Hosting;

/// <summary>Writes control characters of texts as escapes: a file named with a line break or a terminal's colour code must not forge a line of the log.</summary>
internal sealed class CleanText : ILogEventEnricher
{
    public void Enrich(LogEvent logEvent, ILogEventPropertyFactory propertyFactory)
    {
        foreach (var (name, value) in logEvent.Properties.ToList())
        {
            if (value is ScalarValue { Value: string text } && text.Any(char.IsControl))
            {
                logEvent.AddOrUpdateProperty(new LogEventProperty(name, new ScalarValue(Escape(text))));
            }
        }
    }

    private static string Escape(string text)
    {
        var clean = new StringBuilder(text.Length + 16);
        foreach (var character in text)
        {
            _ = char.IsControl(character)
                ? clean.Append(CultureInfo.InvariantCulture, $"\\u{(int)character:X4}")
                : clean.Append(character);
        }

        return clean.ToString();
    }
}
