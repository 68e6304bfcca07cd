namespace LabPipeline.Science.Barcodes;

/// <summary>The half of a tuber.</summary>
public enum TuberHalf
{
    /// <summary>For sugar: S.</summary>
    Sugar,

    /// <summary>For frying: F.</summary>
    Fry,
}
