namespace LabPipeline.Intake.Profiles;

/// <summary>One thing wrong in a profile document.</summary>
/// <remarks>
/// <c>Path</c>: where it stands, such as <c>quantities[0].unit</c>.
/// </remarks>
public sealed record ProfileFault(string Path, string Found, string Expected)
{
    /// <summary>One sentence for a person: "sugars.json, quantities[0].unit: found 'gr'; expected …."</summary>
    public string Describe(string documentName) => $"{documentName}, {Path}: found {Found}; expected {Expected}.";
}
