namespace LabPipeline.Warehouse;

/// <summary>The two databases the warehouse runs on.</summary>
public enum DialectName
{
    Sqlite,
    SqlServer,
}
