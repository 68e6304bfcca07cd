namespace LabPipeline.Reporting.Exports;

/// <summary>What a column of an export holds.</summary>
internal enum ColumnKind
{
    Text,
    Whole,
    Number,
    Date,
    Instant,
}
