namespace LabPipeline.Notifier.Storms;

/// <summary>Keeps a storm of alerts from becoming a storm of messages: single messages up to a limit, what blocks first, the rest as one digest.</summary>
public static class StormThrottle
{
    public static StormVerdict Decide(StormLimits limits, ChannelTraffic traffic, DateTimeOffset now)
    {
        if (traffic.TriedSingly < limits.ImmediateForOthers)
        {
            return StormVerdict.OneByOne;
        }

        if (traffic.BlockWaits && traffic.TriedSingly < limits.Immediate)
        {
            return StormVerdict.BlockOnly;
        }

        return traffic.LastDigestAt is null && now - traffic.OldestDueAt >= limits.GatherFor ? StormVerdict.Digest : StormVerdict.Wait;
    }
}
