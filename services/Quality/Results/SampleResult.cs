using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Results;

/// <summary>A result computed from a sample's readings.</summary>
/// <param name="Quantity">What it is.</param>
/// <param name="Value">Unrounded; the limit it lies below when <paramref name="BelowLimit"/>.</param>
/// <param name="BelowLimit">Whether the result is censored.</param>
/// <param name="N">Test results behind it: extracts, pieces or chips, never repeat readings.</param>
/// <param name="S">Standard deviation between those, when there are two or more.</param>
/// <param name="Basis">How it was made from them, in at most 64 characters.</param>
/// <param name="FromReadings">Identifiers of the readings, sorted.</param>
public sealed record SampleResult(
    Quantity Quantity, decimal Value, bool BelowLimit, int N, decimal? S, string Basis, IReadOnlyList<long> FromReadings)
{
    /// <summary>Whether a reading behind it is in doubt because a control beside it failed.</summary>
    public bool InDoubt { get; init; }
}
