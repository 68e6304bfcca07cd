using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Reading;

/// <summary>A value in its canonical unit, or that there is none.</summary>
internal struct ParsedValue
{
    /// <summary>Number of the text that stood for "no value", or -1 when there is one.</summary>
    public int MissingText;
    public decimal Value;
    public bool BelowLimit;
    public PassingText Raw;
    public string Unit;
}
