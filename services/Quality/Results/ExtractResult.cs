using LabPipeline.Science.Units;

namespace LabPipeline.Quality.Results;

/// <summary>The content found in one extract: one test result in the sense of ISO 5725.</summary>
/// <param name="Extract">The extract as the files name it; empty when they name none.</param>
/// <param name="Content">mg per gram of fresh weight.</param>
/// <param name="MeasuredAt">First measurement behind it, when known.</param>
/// <param name="FromReadings">Identifiers of all readings behind it.</param>
public sealed record ExtractResult(string Extract, LabResult Content, DateTimeOffset? MeasuredAt, IReadOnlyList<long> FromReadings);
