using Microsoft.Extensions.Time.Testing;

namespace LabPipeline.Intake.Tests.Histories;

/// <summary>A clock somebody sets, beside a steady one that knows nothing of it, as on a real machine.</summary>
internal sealed class JumpingTime(DateTimeOffset start) : FakeTimeProvider(start)
{
    private long _jumped;

    public override long GetTimestamp() => base.GetTimestamp() - _jumped;

    /// <summary>Sets the wall clock forward or back.</summary>
    public void Jump(TimeSpan by)
    {
        AdjustTime(GetUtcNow() + by);
        _jumped += by.Ticks;
    }
}
