using LabPipeline.Intake.Text;
using NodaTime;

namespace LabPipeline.Intake.Profiles;

/// <summary>Where the time of measurement stands and how it is written.</summary>
/// <remarks>
/// <c>Columns</c>: their cells are joined by one blank before they are read.
/// <c>Required</c>: when false, a row may leave all of them empty.
/// </remarks>
public sealed record TimeRule(
    IReadOnlyList<string> Columns,
    IReadOnlyList<TimestampPattern> Formats,
    DateTimeZone Zone,
    AmbiguousTime Ambiguous,
    bool Required);
