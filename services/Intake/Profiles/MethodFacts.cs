namespace LabPipeline.Intake.Profiles;

/// <summary>The method behind the readings: what must be known to compare them with others.</summary>
/// <remarks>
/// <c>Facts</c>: free facts by name, such as illuminant, observer, hunterForm.
/// <c>LimitsOfQuantitation</c>: by quantity name, in the quantity's canonical unit.
/// </remarks>
public sealed record MethodFacts(
    string Name,
    string Version,
    IReadOnlyDictionary<string, string> Facts,
    IReadOnlyDictionary<string, decimal> LimitsOfQuantitation);
