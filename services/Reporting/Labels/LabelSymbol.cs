namespace LabPipeline.Reporting.Labels;

/// <summary>The symbol a label carries.</summary>
public enum LabelSymbol
{
    /// <summary>Code 128 (ISO/IEC 15417): bars, read by any scanner; for tags.</summary>
    Code128,

    /// <summary>Data Matrix (ISO/IEC 16022): a square, for small labels.</summary>
    DataMatrix,
}
