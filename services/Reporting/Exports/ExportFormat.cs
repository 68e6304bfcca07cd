namespace LabPipeline.Reporting.Exports;

/// <summary>The kind of file an export is written as.</summary>
public enum ExportFormat
{
    Csv,

    /// <summary>Apache Parquet: typed columns, read by R, Python and most query engines.</summary>
    Parquet,

    /// <summary>An Office Open XML workbook, with the data dictionary on its second sheet.</summary>
    Workbook,
}
