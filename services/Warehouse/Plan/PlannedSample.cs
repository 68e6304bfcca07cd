using LabPipeline.Science.Barcodes;

namespace LabPipeline.Warehouse.Plan;

/// <summary>The sample of one plot at one pull.</summary>
public sealed record PlannedSample(SampleBarcode Barcode, int RunningNumber, TrialPull Pull, TrialPlot Plot);
