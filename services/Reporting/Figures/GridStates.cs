using LabPipeline.Warehouse.Results;

namespace LabPipeline.Reporting.Figures;

/// <summary>Sums up the measurements of one sample.</summary>
internal static class GridStates
{
    public static GridState Of(IReadOnlyList<string> states)
    {
        bool All(params string[] allowed) => states.All(allowed.Contains);
        return All(MeasurementStates.Done) ? GridState.Done
            : All(MeasurementStates.Done, MeasurementStates.Late) ? GridState.Late
            : All(MeasurementStates.Missing) ? GridState.Missing
            : All(MeasurementStates.Expected) ? GridState.Expected
            : states.Contains(MeasurementStates.Excluded) ? GridState.Excluded
            : GridState.InPart;
    }

    public static string Name(GridState state) => state switch
    {
        GridState.Done => "done",
        GridState.Late => "done late",
        GridState.InPart => "in part",
        GridState.Excluded => "with measurements set aside",
        GridState.Missing => "missing",
        _ => "still expected",
    };
}
