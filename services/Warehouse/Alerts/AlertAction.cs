namespace LabPipeline.Warehouse.Alerts;

/// <summary>What became of a person's action on an alert.</summary>
public enum AlertAction
{
    Done,

    /// <summary>No alert has this number.</summary>
    NotFound,

    /// <summary>The alert is not open any more; nothing was changed.</summary>
    NotOpen,
}
