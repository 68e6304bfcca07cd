using System.Globalization;
using Serilog;
using Serilog.Core;
using Serilog.Events;

namespace LabPipeline.Hosting.Tests.Logging;

/// <summary>CWE-117 (improper output neutralization for logs): one event stays one line, whatever a file is called.</summary>
public sealed class VisiblePropertiesTests
{
    [Theory]
    [Shows(67)]
    [InlineData("a.csv\n2026-01-14 12:00 [Information] FileStored forged.csv", "a.csv\\n2026-01-14 12:00 [Information] FileStored forged.csv")]
    [InlineData("\u001b[2J\u001b[31mred.csv", "\\u001B[2J\\u001B[31mred.csv")]
    [InlineData("a\r\nb", "a\\r\\nb")]
    [InlineData("Kärtchen °C.csv", "Kärtchen °C.csv")]
    public void Text_WhenItHoldsControlCharacters_IsLoggedWithEscapes(string name, string written)
    {
        var sink = new Lines();
        using (var log = new LoggerConfiguration().Enrich.With<VisibleProperties>().WriteTo.Sink(sink).CreateLogger())
        {
            log.Information("FileSeen {Name:l} {Bytes}", name, 17);
        }

        Assert.Equal($"FileSeen {written} 17", Assert.Single(sink.Written));
    }

    private sealed class Lines : ILogEventSink
    {
        public List<string> Written { get; } = [];

        public void Emit(LogEvent logEvent) => Written.Add(logEvent.RenderMessage(CultureInfo.InvariantCulture));
    }
}
