namespace LabPipeline.Intake.Keeping;

/// <summary>When backup and audit are due: once a day, and not while a laboratory is just starting its day's work.</summary>
public static class KeepingSchedule
{
    private static readonly TimeSpan Every = TimeSpan.FromDays(1);
    private static readonly TimeSpan AfterStart = TimeSpan.FromHours(1);

    public static bool IsDue(DateTimeOffset startedAt, DateTimeOffset? last, DateTimeOffset now) =>
        now - startedAt >= AfterStart && (last is not { } then || now - then >= Every || then > now);
}
