namespace LabPipeline.Warehouse.Alerts;

/// <summary>How much an alert stops, as the warehouse writes it.</summary>
public static class AlertLevels
{
    /// <summary>The value cannot be used.</summary>
    public const string Block = "block";

    /// <summary>A person must decide before the value is used.</summary>
    public const string Hold = "hold";

    /// <summary>Worth knowing; nothing stops.</summary>
    public const string Note = "note";
}
