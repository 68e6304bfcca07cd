namespace LabPipeline.Reporting.Exports;

/// <summary>How an export ended.</summary>
/// <param name="State">Whether it was written.</param>
/// <param name="Rows">Rows written, the header not counted.</param>
/// <param name="Explanation">Why nothing was written and what to do; empty when it was.</param>
public sealed record ExportOutcome(ExportState State, long Rows, string Explanation)
{
    internal static ExportOutcome Written(long rows) => new(ExportState.Written, rows, "");
}
