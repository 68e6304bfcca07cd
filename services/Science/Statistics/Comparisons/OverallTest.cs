namespace LabPipeline.Science.Statistics.Comparisons;

/// <summary>The F test of "all these means are equal", against its right error term, that protects Fisher's LSD.</summary>
/// <param name="F">The F ratio.</param>
/// <param name="Df1">Degrees of freedom of the treatments.</param>
/// <param name="Df2">Degrees of freedom of the error.</param>
public readonly record struct OverallTest(double F, double Df1, double Df2);
