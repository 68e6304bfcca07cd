using FsCheck;
using FsCheck.Xunit;
using LabPipeline.Notifier.Deliveries;

namespace LabPipeline.Notifier.Tests.Deliveries;

public sealed class RetryScheduleTests
{
    // Common practice, no source: doubling from one minute to an hour.
    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 2)]
    [InlineData(3, 4)]
    [InlineData(6, 32)]
    [InlineData(7, 60)]
    [InlineData(60, 60)]
    [InlineData(int.MaxValue, 60)]
    public void Next_WhenAttemptsGrow_DoublesUpToAnHour(int attempts, double minutes)
    {
        var delay = RetrySchedule.Next(attempts, TimeSpan.Zero, null, new MiddleRandom());

        Assert.Equal(minutes, delay!.Value.TotalMinutes, 9);
    }

    [Property]
    public bool Next_WhateverIsDrawn_StaysWithinTheJitter(PositiveInt attempts, int seed)
    {
        var middle = RetrySchedule.Next(attempts.Get, TimeSpan.Zero, null, new MiddleRandom())!.Value;
        var delay = RetrySchedule.Next(attempts.Get, TimeSpan.Zero, null, new Random(seed))!.Value;

        return delay >= middle * 0.8 && delay <= middle * 1.2;
    }

    [Fact]
    [Shows(64)]
    public void Next_WhenTwoDaysHavePassed_GivesUp()
    {
        Assert.NotNull(RetrySchedule.Next(50, TimeSpan.FromHours(48) - TimeSpan.FromSeconds(1), null, new MiddleRandom()));
        Assert.Null(RetrySchedule.Next(50, TimeSpan.FromHours(48), null, new MiddleRandom()));
    }

    [Theory]
    [InlineData(30, 60)]
    [InlineData(600, 600)]
    [InlineData(86400, 3600)]
    public void Next_WhenTheTargetAsksForRest_GrantsAtMostAnHour(int askedSeconds, int expectedSeconds)
    {
        var delay = RetrySchedule.Next(1, TimeSpan.Zero, TimeSpan.FromSeconds(askedSeconds), new MiddleRandom());

        Assert.Equal(expectedSeconds, delay!.Value.TotalSeconds, 6);
    }

    [Fact]
    public void Defaults_AreAsDocumented()
    {
        Assert.Equal(TimeSpan.FromMinutes(1), RetrySchedule.First);
        Assert.Equal(TimeSpan.FromHours(1), RetrySchedule.Longest);
        Assert.Equal(TimeSpan.FromHours(48), RetrySchedule.GiveUpAfter);
        Assert.Equal(0.2, RetrySchedule.Jitter);
        Assert.Equal(TimeSpan.FromMinutes(10), DeliveryWatch.UndeliveredAfter);
    }

    private sealed class MiddleRandom : Random
    {
        public override double NextDouble() => 0.5;
    }
}
