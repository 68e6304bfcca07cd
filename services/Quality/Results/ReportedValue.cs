using LabPipeline.Science.Units;

namespace LabPipeline.Quality.Results;

/// <summary>The one number a result is stored under.</summary>
/// <remarks>
/// Measured: the number. Below its limit: the limit, censored. Known as an interval, because a reading behind it came without a number: the
/// middle while the interval is narrow against it, else censored at the upper end, which is true whatever the number was.
/// </remarks>
internal readonly record struct ReportedValue(decimal Value, bool BelowLimit, string Remark)
{
    /// <summary>An interval at most this share of its middle is reported by its middle; twice the provisional 5 % repeatability (common practice, no source).</summary>
    public const decimal NarrowShare = 0.10m;

    public static ReportedValue Of(LabResult result)
    {
        if (result.Kind != ResultKind.Between)
        {
            return result.Kind == ResultKind.Measured
                ? new ReportedValue(result.Raw!.Value, false, "")
                : new ReportedValue(result.Limit!.Value, true, "");
        }

        var middle = (result.Low + result.High) / 2m;
        return result.High <= 0m || (result.Low > 0m && result.High - result.Low <= NarrowShare * middle)
            ? new ReportedValue(middle, false, ", middle of interval")
            : new ReportedValue(result.High, true, ", upper end of interval");
    }
}
