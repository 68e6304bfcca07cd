namespace LabPipeline.Warehouse.Results;

/// <summary>How far an expected measurement is.</summary>
public static class MeasurementStates
{
    /// <summary>Not complete, and there is time.</summary>
    public const string Expected = "expected";

    /// <summary>Complete, within the window.</summary>
    public const string Done = "done";

    /// <summary>Complete, but finished after the window.</summary>
    public const string Late = "late";

    /// <summary>The window has closed and readings are missing.</summary>
    public const string Missing = "missing";

    /// <summary>Readings were set aside with a reason, and without them it is not complete.</summary>
    public const string Excluded = "excluded";
}
