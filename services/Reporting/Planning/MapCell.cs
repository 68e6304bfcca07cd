using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Planning;

/// <summary>A plot where it lies in the field: row and column count from 1, from the corner where the first plot is.</summary>
public sealed record MapCell(int Row, int Column, TrialPlot Plot);
