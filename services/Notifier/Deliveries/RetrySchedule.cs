namespace LabPipeline.Notifier.Deliveries;

/// <summary>When a delivery that could not be made is tried again: after 1, 2, 4 ... minutes, then hourly, for two days.</summary>
/// <remarks>
/// Mail relays keep trying for four to five days (RFC 5321, 4.5.4.1); an alert two days old has been red on every other channel
/// for almost all of them. The first delays suit greylisting servers, which take a message at its second coming some minutes later.
/// </remarks>
public static class RetrySchedule
{
    public static readonly TimeSpan First = TimeSpan.FromMinutes(1);

    public static readonly TimeSpan Longest = TimeSpan.FromHours(1);

    public static readonly TimeSpan GiveUpAfter = TimeSpan.FromHours(48);

    /// <summary>Part of each delay by which it is shortened or lengthened, so that many waiting deliveries do not knock together.</summary>
    public const double Jitter = 0.2;

    // 2 to the 6th minutes is past the longest delay already.
    private const int MostDoublings = 6;

    /// <param name="attempts">Attempts made, at least 1.</param>
    /// <param name="age">Time since the delivery was first owed.</param>
    /// <param name="asked">How long the target asked to be left alone, when it did; at most <see cref="Longest"/> is granted.</param>
    /// <param name="random">The source of the jitter.</param>
    /// <returns>The delay before the next attempt, or null when it is given up.</returns>
    public static TimeSpan? Next(int attempts, TimeSpan age, TimeSpan? asked, Random random)
    {
        if (age >= GiveUpAfter)
        {
            return null;
        }

        var grown = First * Math.Pow(2, Math.Min(attempts - 1, MostDoublings));
        var delay = (grown < Longest ? grown : Longest) * (1 - Jitter + (2 * Jitter * random.NextDouble()));
        var granted = asked is null || asked < Longest ? asked ?? TimeSpan.Zero : Longest;
        return delay > granted ? delay : granted;
    }
}
