using LabPipeline.Notifier.Deliveries;

namespace LabPipeline.Notifier.Messages;

/// <summary>The word in brackets at the start of a subject.</summary>
public static class NoticeLabels
{
    /// <summary>The level for a raising, otherwise what happened.</summary>
    public static string Of(string deliveryEvent, string level) => deliveryEvent switch
    {
        DeliveryEvents.Raised => level,
        DeliveryEvents.Cleared => "cleared",
        DeliveryEvents.Undelivered => "undelivered",
        DeliveryEvents.Reminder => level + ", reminder",
        _ => throw new ArgumentException($"Found delivery event '{deliveryEvent}'; expected raised, cleared, undelivered or reminder."),
    };
}
