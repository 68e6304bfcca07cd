using LabPipeline.Quality.Evaluation;

namespace LabPipeline.Quality.Tests.Evaluation;

public sealed class PullCalendarTests
{
    private static readonly DateTimeOffset Now = new(2026, 10, 7, 15, 0, 0, TimeSpan.Zero);

    private static readonly PlannedPull Later = new() { TrialCode = "NT26", PullNo = 2, DueOn = new DateOnly(2026, 11, 1), TimeZone = "America/Chicago" };

    /// <summary>Nobody knows whether its day has come, so its rules are asked once, and say that they could not be evaluated.</summary>
    [Fact]
    public void Due_WhenTheTimeZoneDoesNotExist_HasThePullOnceWhateverItsDay()
    {
        var lastDates = new Dictionary<PullKey, DateOnly?>();
        PlannedPull[] pulls = [Later, Later with { PullNo = 3, TimeZone = "Mars/Olympus" }];

        var first = PullCalendar.Due(pulls, lastDates, _ => false, Now);
        var second = PullCalendar.Due(pulls, lastDates, _ => false, Now.AddDays(1));

        Assert.Equal(3, Assert.Single(first).PullNo);
        Assert.Empty(second);
    }
}
