using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Rules;

/// <summary>A quantity every sample of a pull must come with, and in how many readings.</summary>
public sealed record PullExpectation(Quantity Quantity, int Readings);
