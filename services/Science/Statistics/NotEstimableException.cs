namespace LabPipeline.Science.Statistics;

/// <summary>The data are well formed, but the quantity asked for has no value in them.</summary>
/// <remarks>
/// Bad input (NaN, an empty group, a probability outside 0 to 1) is an <see cref="ArgumentException"/>.
/// This exception is for data without enough information, such as equal values everywhere, so that a
/// report can print the reason where the number would stand.
/// </remarks>
/// <param name="what">The quantity, as a report would name it: "Pearson correlation".</param>
/// <param name="why">The reason as a clause: "all 12 values of x are equal to 4.1".</param>
public sealed class NotEstimableException(string what, string why)
    : Exception($"{what} is not estimable: {why}.")
{
    /// <summary>The quantity asked for.</summary>
    public string What => what;

    /// <summary>The reason, without a final full stop.</summary>
    public string Why => why;
}
