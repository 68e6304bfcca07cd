namespace LabPipeline.Reporting.Labels;

/// <summary>The half of a tuber.</summary>
public enum LabelHalf
{
    /// <summary>For sugar: S.</summary>
    Sugar,

    /// <summary>For frying: F.</summary>
    Fry,
}
