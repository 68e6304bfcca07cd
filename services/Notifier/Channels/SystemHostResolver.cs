using System.Net;

namespace LabPipeline.Notifier.Channels;

/// <summary>Asks the operating system.</summary>
public sealed class SystemHostResolver : IHostResolver
{
    public Task<IPAddress[]> ResolveAsync(string host, CancellationToken cancellationToken) => Dns.GetHostAddressesAsync(host, cancellationToken);
}
