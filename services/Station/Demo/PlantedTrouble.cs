namespace LabPipeline.Station.Demo;

/// <summary>Something that went wrong on the invented bench on purpose.</summary>
/// <remarks>
/// <c>Where</c>: barcode, file, run, or a pull and its plots; an alert about it holds every part between the commas. <c>Rule</c>: the quality rule that should find it; null when it must pass in silence.
/// <c>AlsoRules</c>: rules that must speak as well, because of what follows from it.
/// </remarks>
public sealed record PlantedTrouble(string Name, string What, string Where, string? Rule, IReadOnlyList<string> AlsoRules);
