namespace LabPipeline.Quality.Evaluation;

/// <summary>What one look of the pull watch did.</summary>
/// <param name="Skipped">Why it did nothing; null when it looked.</param>
/// <param name="Pulls">Pulls evaluated.</param>
public sealed record WatchLook(string? Skipped, int Pulls);
