namespace LabPipeline.Science.ControlCharts;

/// <summary>A rule that fired.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Index">Index of the last point of the pattern, from 0.</param>
public sealed record RunRuleSignal(RunRule Rule, int Index);
