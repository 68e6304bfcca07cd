using LabPipeline.Notifier.Routing;

namespace LabPipeline.Notifier.Channels;

/// <summary>The channels of this laboratory.</summary>
public sealed class ChannelSet(IEnumerable<IAlertChannel> channels)
{
    public IReadOnlyList<IAlertChannel> All { get; } = [.. channels];

    public IEnumerable<ChannelPolicy> Policies => All.Select(channel => channel.Policy);

    /// <summary>Whether <paramref name="channel"/> is told even of what came and went; false for one that left the settings.</summary>
    public bool IsCompleteRecord(string channel) => Policies.Any(policy => policy.Name == channel && policy.IsCompleteRecord);
}
