namespace LabPipeline.Hosting.Bus;

/// <summary>Sign of life of one queue's consumer: how many messages it handles now, and when it last got or finished one.</summary>
public sealed class EndpointPulse(TimeProvider time)
{
    private long _lastAt = time.GetTimestamp();
    private int _inHand;

    public int InHand => Volatile.Read(ref _inHand);

    public TimeSpan Idle => time.GetElapsedTime(Volatile.Read(ref _lastAt));

    public void Enter()
    {
        Interlocked.Increment(ref _inHand);
        Volatile.Write(ref _lastAt, time.GetTimestamp());
    }

    public void Leave()
    {
        Volatile.Write(ref _lastAt, time.GetTimestamp());
        Interlocked.Decrement(ref _inHand);
    }
}
