using LabPipeline.Notifier.Deliveries;

namespace LabPipeline.Notifier.Routing;

/// <summary>Which channels are told of a raising, and when.</summary>
public static class RaisingPlan
{
    /// <summary>Why nothing is sent when the clearing was handled before the raising could be told.</summary>
    public const string CameAndWent = "came and went before it was told";

    /// <summary>One delivery for each channel that wants <paramref name="level"/>.</summary>
    public static IReadOnlyList<NewDelivery> Of(
        int alertId, int timesRaised, AlertLevel level, bool isOver, IEnumerable<ChannelPolicy> channels, DateTimeOffset now) =>
    [
        .. channels.Where(channel => channel.Levels.Contains(level)).Select(channel => new NewDelivery
        {
            AlertId = alertId,
            TimesRaised = timesRaised,
            Event = DeliveryEvents.Raised,
            Channel = channel.Name,
            Urgency = (int)level,
            State = isOver && !channel.IsCompleteRecord ? DeliveryStates.HeldBack : DeliveryStates.Pending,
            Reason = isOver && !channel.IsCompleteRecord ? CameAndWent : null,
            CreatedAt = now,
        }.Scheduled(channel, level)),
    ];
}
