namespace LabPipeline.Science.ControlCharts;

/// <summary>What the controls around a reading say about it.</summary>
public enum BracketState
{
    /// <summary>The controls before and after it passed.</summary>
    Good = 1,

    /// <summary>A control before or after it failed: the instrument may have been off already, or still.</summary>
    InDoubt = 2,

    /// <summary>None next to it failed, but there is no control on one side: not vouched for.</summary>
    Open = 3,
}
