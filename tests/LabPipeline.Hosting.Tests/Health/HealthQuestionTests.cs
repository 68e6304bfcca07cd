using LabPipeline.Hosting.Health;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Hosting.Tests.Health;

/// <summary>A service that died or hangs is told apart from one that works, by its signs of life.</summary>
public sealed class HealthQuestionTests
{
    private static readonly DateTimeOffset Now = new(2026, 1, 14, 8, 0, 0, TimeSpan.Zero);

    [Theory]
    [Shows(80)]
    [InlineData(0, true)]
    [InlineData(120, true)]
    [InlineData(121, false)]
    public void Service_WhenItsLastSignOfLifeIsSoOld_LivesOrNot(int seconds, bool lives) =>
        Assert.Equal(lives, HealthQuestion.WhyNot("quality", [Beat("quality", seconds), Beat("notifier", 0)], Now) is null);

    [Fact]
    public void Service_WhenItNeverLeftASignOfLife_IsSaidToBeMissing() =>
        Assert.Contains("has never left a sign of life", HealthQuestion.WhyNot("quality", [Beat("notifier", 0)], Now), StringComparison.Ordinal);

    private static Heartbeat Beat(string service, int secondsAgo) => new() { Service = service, StartedAt = Now.AddDays(-1), BeatAt = Now.AddSeconds(-secondsAgo) };
}
