namespace LabPipeline.Reporting.Season;

/// <summary>The scale a response is analysed on, settled before any data are seen.</summary>
internal enum ResponseScaleKind
{
    Measured,

    /// <summary>Right-skewed, spread proportional to the mean: sugars.</summary>
    Log,

    /// <summary>Shares of chips, in percent.</summary>
    Share,
}
