using System.Globalization;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Hosting.Health;

/// <summary>Whether a service lives, from the sign of life it last left in the warehouse.</summary>
public static class HealthQuestion
{
    /// <summary>A beat is due every ten seconds; a bulk load may hold the pen for some of them.</summary>
    public static readonly TimeSpan LongestSilence = TimeSpan.FromMinutes(2);

    /// <returns>Null when it lives, otherwise what is wrong in one line.</returns>
    public static string? WhyNot(string service, IEnumerable<Heartbeat> beats, DateTimeOffset now)
    {
        var beat = beats.SingleOrDefault(candidate => candidate.Service == service);
        if (beat is null)
        {
            return $"{service} has never left a sign of life; expected one every few seconds. Is it running on this warehouse?";
        }

        var silence = now - beat.BeatAt;
        return silence <= LongestSilence
            ? null
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{service} left its last sign of life {silence.TotalSeconds:F0} s ago, at {beat.BeatAt:yyyy-MM-dd HH:mm:ss} UTC; expected one within {LongestSilence.TotalSeconds:F0} s. Look into its log.");
    }
}
