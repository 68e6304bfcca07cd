namespace LabPipeline.Science.Order;

/// <summary>What went wrong with an order, as far as the order itself can tell.</summary>
public enum OrderPattern
{
    /// <summary>A stretch of samples stands the same number of places before or after the planned ones.</summary>
    Shifted = 1,

    /// <summary>A whole tray or rack stands turned by 180°: its last sample where its first was planned, and so on.</summary>
    TrayRotated = 2,

    /// <summary>Two samples next to each other stand in each other's place.</summary>
    NeighboursSwapped = 3,

    /// <summary>Two samples further apart stand in each other's place.</summary>
    Exchanged = 4,

    /// <summary>A sample stands at a place that was planned for another one, and no pattern explains it.</summary>
    Misplaced = 5,

    /// <summary>A sample that is not in this order at all.</summary>
    Foreign = 6,

    /// <summary>A sample that was reported before, at an earlier place.</summary>
    Repeated = 7,
}
