namespace LabPipeline.Warehouse.Facts;

/// <summary>What a fact speaks about: a sample, a control material, or the run (fry batch) itself.</summary>
public enum FactSubject
{
    Sample,
    Control,
    FryBatch,
}
