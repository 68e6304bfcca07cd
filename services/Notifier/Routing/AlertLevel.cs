namespace LabPipeline.Notifier.Routing;

/// <summary>How much an alert stops: the order is the order in which alerts are told.</summary>
public enum AlertLevel
{
    Block,
    Hold,
    Note,
}
