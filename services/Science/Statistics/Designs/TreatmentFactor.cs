namespace LabPipeline.Science.Statistics.Designs;

/// <summary>A treatment factor of a trial plan.</summary>
/// <param name="Name">Its name; not "block", "main plot", "plot" or "pull", which the analysis uses itself.</param>
/// <param name="Levels">All levels planned, in reporting order; at least two.</param>
public sealed record TreatmentFactor(string Name, IReadOnlyList<string> Levels);
