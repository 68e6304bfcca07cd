namespace LabPipeline.Science.Statistics.Designs;

/// <summary>A mean or a difference carried back from the scale of analysis to the scale of measurement.</summary>
/// <param name="Meaning">What the number is: "geometric mean", "ratio", "odds ratio".</param>
/// <param name="Value">In units of measurement; a ratio has none.</param>
/// <param name="Low">Lower end of the interval.</param>
/// <param name="High">Upper end of the interval.</param>
public sealed record BackTransformed(string Meaning, double Value, double Low, double High);
