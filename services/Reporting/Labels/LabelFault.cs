namespace LabPipeline.Reporting.Labels;

/// <summary>One thing that keeps labels from being printed.</summary>
/// <param name="Where">The sheet's member, or the label and its field.</param>
/// <param name="Found">What was found.</param>
/// <param name="Expected">What would be right.</param>
/// <param name="Advice">What to do.</param>
public sealed record LabelFault(string Where, string Found, string Expected, string Advice)
{
    public override string ToString() => $"{Where}: found {Found}; expected {Expected}. {Advice}";
}
