namespace LabPipeline.Intake.Reading;

/// <summary>Where a fault was met.</summary>
internal readonly record struct CellPlace(int Line, int Column = 0, string? ColumnName = null)
{
    public static CellPlace File => default;
}
