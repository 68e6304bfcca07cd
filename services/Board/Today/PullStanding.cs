namespace LabPipeline.Board.Today;

/// <summary>Where a pull stands on a day.</summary>
public enum PullStanding
{
    /// <summary>Its window has not opened.</summary>
    ToCome,

    /// <summary>Its window is open and something is still to be measured.</summary>
    OnBench,

    /// <summary>Every planned sample has every expected quantity.</summary>
    Complete,

    /// <summary>Its window has closed and something was not measured.</summary>
    Gaps,
}
