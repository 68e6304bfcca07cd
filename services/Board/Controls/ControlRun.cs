using LabPipeline.Warehouse.Controls;

namespace LabPipeline.Board.Controls;

/// <summary>One run on a control chart: its opening control, the limits it was held against, and what they said.</summary>
/// <param name="Run">The run.</param>
/// <param name="MeasuredAt">When its opening control was measured; null when the file does not say.</param>
/// <param name="Value">What it read.</param>
/// <param name="Limits">The limits in force then; null when there were none.</param>
/// <param name="Controls">Controls of the chart in this run.</param>
/// <param name="Failed">How many of them failed.</param>
/// <param name="Rules">Names of the rules that are broken, each once: those within the run, then those from run to run.</param>
public sealed record ControlRun(
    string Run, DateTimeOffset? MeasuredAt, decimal Value, ControlLimitRow? Limits, int Controls, int Failed, IReadOnlyList<string> Rules)
{
    /// <summary>The opening control passed, but another of the run did not, or a pattern runs through the runs, or nothing says what is good.</summary>
    public string Kind => Limits is null ? "not judged" : Failed > 0 ? "failed" : Rules.Count > 0 ? "drift" : "within";
}
