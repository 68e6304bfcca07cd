using LabPipeline.Notifier.Messages;
using LabPipeline.Notifier.Routing;

namespace LabPipeline.Notifier.Channels;

/// <summary>A way to tell people or programs; it sends once and says how that went, retrying is not its business.</summary>
public interface IAlertChannel
{
    ChannelPolicy Policy { get; }

    /// <param name="notices">At most <see cref="ChannelPolicy.BatchSize"/>; they succeed or fail together.</param>
    /// <param name="cancellationToken">Ends the attempt when it takes too long.</param>
    Task<SendOutcome> SendAsync(IReadOnlyList<Notice> notices, CancellationToken cancellationToken);
}
