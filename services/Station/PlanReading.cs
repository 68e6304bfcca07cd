using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Station;

/// <summary>Reads a plan document from disk.</summary>
internal static class PlanReading
{
    public static PlanResult Read(string path)
    {
        if (!File.Exists(path))
        {
            throw new StationException(ExitCode.NotFound, $"No file {path}; expected a plan document (docs/specs/trial-plan.md shows one).");
        }

        return PlanFile.Read(path);
    }

    /// <exception cref="StationException">The plan has faults; all of them are in the message.</exception>
    public static TrialPlan ReadValid(string path)
    {
        var result = Read(path);
        return result.Plan ?? throw new StationException(
            ExitCode.Faults,
            string.Join(Environment.NewLine, result.Faults.Select(fault => fault.Describe(Path.GetFileName(path))).Append($"{result.Faults.Count} faults; nothing was loaded.")));
    }
}
