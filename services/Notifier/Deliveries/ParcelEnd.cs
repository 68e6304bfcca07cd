using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Messages;

namespace LabPipeline.Notifier.Deliveries;

/// <summary>What an attempt's outcome means for its rows.</summary>
public static class ParcelEnd
{
    private const int LongestError = 1900;

    public static Marking Of(Parcel parcel, SendOutcome outcome, DateTimeOffset now, Random random)
    {
        var reason = NoticeText.OneLine(outcome.Reason, LongestError);
        switch (outcome.Result)
        {
            case SendResult.Sent:
                return new Marking { State = DeliveryStates.Delivered, NextAttemptAt = now, DeliveredAt = now };
            case SendResult.TryLater when RetrySchedule.Next(parcel.Attempts, now - parcel.DueAt, outcome.RetryAfter, random) is { } delay:
                return new Marking { State = DeliveryStates.Pending, NextAttemptAt = now + delay, Error = reason };
            case SendResult.TryLater:
                return new Marking { State = DeliveryStates.Failed, NextAttemptAt = now, Error = "given up after 48 h: " + reason };
            default:
                return new Marking { State = DeliveryStates.Failed, NextAttemptAt = now, Error = reason };
        }
    }

    /// <summary>The attempt did not take place: the target is being left alone.</summary>
    public static Marking PutBack(DateTimeOffset now) => new() { State = DeliveryStates.Pending, AttemptStep = -1, NextAttemptAt = now };
}
