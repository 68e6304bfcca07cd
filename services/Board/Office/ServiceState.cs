using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Board.Office;

/// <summary>A service by its last sign of life.</summary>
public sealed record ServiceState(Heartbeat Beat, TimeSpan Age, bool IsSilent);
