namespace LabPipeline.Science.Statistics.Designs;

/// <summary>Everything a season report needs of one response.</summary>
/// <param name="Statement">Design, scale and model in words.</param>
/// <param name="Pulls">One analysis a pull taken, or a single one.</param>
/// <param name="Repeated">The analysis over all pulls; null where fewer than two were taken.</param>
public sealed record FieldTrialResult(string Statement, IReadOnlyList<PullAnalysis> Pulls, RepeatedAnalysis? Repeated);
