namespace LabPipeline.Warehouse.Plan.Rows;

internal sealed record PlotLevelRow(string TrialCode, string PlotCode, string Factor, string Level);
