using Serilog.Core;
using Serilog.Events;

namespace LabPipeline.Hosting;

/// <summary>Makes the texts of log entries visible: a file named with a line break or a terminal's colour code must not forge a line of the log.</summary>
internal sealed class VisibleProperties : ILogEventEnricher
{
    public void Enrich(LogEvent logEvent, ILogEventPropertyFactory propertyFactory)
    {
        foreach (var (name, value) in logEvent.Properties.ToList())
        {
            if (value is ScalarValue { Value: string text } && !VisibleText.IsVisible(text))
            {
                logEvent.AddOrUpdateProperty(new LogEventProperty(name, new ScalarValue(VisibleText.Of(text, int.MaxValue))));
            }
        }
    }
}
