namespace LabPipeline.Board.Tests;

/// <summary>A clock that stands still in a zone one hour ahead of UTC.</summary>
internal sealed class FixedTime(DateTimeOffset now) : TimeProvider
{
    public override TimeZoneInfo LocalTimeZone { get; } = TimeZoneInfo.CreateCustomTimeZone("bench", TimeSpan.FromHours(1), "bench", "bench");

    public override DateTimeOffset GetUtcNow() => now;
}
