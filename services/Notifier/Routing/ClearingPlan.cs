using LabPipeline.Notifier.Deliveries;

namespace LabPipeline.Notifier.Routing;

/// <summary>Who is told that an alert cleared: those who were told of it.</summary>
public static class ClearingPlan
{
    /// <summary>Clearings are told after every raising.</summary>
    public const int Urgency = (int)AlertLevel.Note + 1;

    /// <remarks>A raising that was tried once may have arrived although no answer came back, so its clearing is told.</remarks>
    public static ClearingStep Of(RaisedDelivery raised, bool isCompleteRecord) => raised.State switch
    {
        DeliveryStates.Delivered => ClearingStep.Tell,
        DeliveryStates.Pending when raised.Attempts > 0 || isCompleteRecord => ClearingStep.Tell,
        DeliveryStates.Pending => ClearingStep.HoldBackBoth,
        _ => ClearingStep.Nothing,
    };
}
