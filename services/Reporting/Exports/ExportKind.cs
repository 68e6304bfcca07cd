namespace LabPipeline.Reporting.Exports;

/// <summary>What an export holds.</summary>
public enum ExportKind
{
    /// <summary>One row a plot and pull: the unit of analysis.</summary>
    PlotMeans,

    /// <summary>One row a sample.</summary>
    SampleResults,

    /// <summary>One row a reading that counts.</summary>
    Readings,
}
