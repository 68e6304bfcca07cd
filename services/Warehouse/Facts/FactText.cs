namespace LabPipeline.Warehouse.Facts;

/// <summary>How long the texts of a fact may be. SQL Server's columns and keys have these lengths, so readers refuse longer ones for either database.</summary>
public static class FactText
{
    public const int LongestInstrument = 64;

    public const int LongestRun = 128;

    public const int LongestRowKey = 200;

    public const int LongestBarcode = 32;

    public const int LongestMaterial = 128;

    public const int LongestRawValue = 64;

    public const int LongestRawUnit = 16;

    public const int LongestExtract = 32;

    public const int LongestOperator = 128;

    public const int LongestMeasuredAs = 64;
}
