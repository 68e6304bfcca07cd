namespace LabPipeline.Science.ControlCharts;

/// <summary>A point of an EWMA chart.</summary>
/// <param name="Average">Exponentially weighted moving average up to this value.</param>
/// <param name="Limits">Limits that hold at this point; they widen over the first points.</param>
public sealed record EwmaPoint(decimal Average, ControlLimits Limits)
{
    /// <summary>Whether the average lies beyond a limit.</summary>
    public bool IsOut => Limits.IsOut(Average);
}
