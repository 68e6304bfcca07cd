namespace LabPipeline.Warehouse.Plan;

/// <summary>One thing wrong in a plan document.</summary>
/// <remarks>
/// <c>Path</c>: where it stands, such as <c>pulls[2].due</c> or, in the plots file, <c>plots.csv line 7</c>.
/// <c>Advice</c>: what to do about it.
/// </remarks>
public sealed record PlanFault(string Path, string Found, string Expected, string Advice)
{
    /// <summary>One sentence for a person.</summary>
    public string Describe(string documentName) => $"{documentName}, {Path}: found {Found}; expected {Expected}. {Advice}";
}
