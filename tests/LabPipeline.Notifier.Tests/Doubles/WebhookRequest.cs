using System.Globalization;
using System.Text;

namespace LabPipeline.Notifier.Tests.Doubles;

/// <summary>A request as it came over the wire.</summary>
internal sealed record WebhookRequest(string RequestLine, IReadOnlyDictionary<string, string> Headers, byte[] Body)
{
    public static async Task<WebhookRequest> ReadAsync(Stream stream, CancellationToken cancellationToken)
    {
        var head = new StringBuilder();
        var one = new byte[1];
        while (!head.ToString().EndsWith("\r\n\r\n", StringComparison.Ordinal))
        {
            await stream.ReadExactlyAsync(one, cancellationToken);
            head.Append((char)one[0]);
        }

        var lines = head.ToString().Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        var headers = lines.Skip(1).Select(line => line.Split(": ", 2))
            .ToDictionary(parts => parts[0], parts => parts[1], StringComparer.OrdinalIgnoreCase);
        var body = new byte[int.Parse(headers["Content-Length"], CultureInfo.InvariantCulture)];
        await stream.ReadExactlyAsync(body, cancellationToken);
        return new WebhookRequest(lines[0], headers, body);
    }
}
