using System.Net;

namespace LabPipeline.Notifier.Channels;

/// <summary>Finds the addresses behind a host name.</summary>
public interface IHostResolver
{
    Task<IPAddress[]> ResolveAsync(string host, CancellationToken cancellationToken);
}
