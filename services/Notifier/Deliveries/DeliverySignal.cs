namespace LabPipeline.Notifier.Deliveries;

/// <summary>Wakes every channel when deliveries were written; without it the channels look on their timer.</summary>
public sealed class DeliverySignal
{
    private TaskCompletionSource _ring = Fresh();

    /// <summary>Completes at the next <see cref="Wake"/>; take it before looking, so that no waking is missed.</summary>
    public Task Next => Volatile.Read(ref _ring).Task;

    public void Wake() => Interlocked.Exchange(ref _ring, Fresh()).TrySetResult();

    private static TaskCompletionSource Fresh() => new(TaskCreationOptions.RunContinuationsAsynchronously);
}
