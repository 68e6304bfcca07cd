namespace LabPipeline.Reporting.Figures;

/// <summary>A plot at a pull over everything the plan expects there.</summary>
internal enum GridState
{
    Done,
    Late,
    InPart,
    Excluded,
    Missing,
    Expected,
}
