namespace LabPipeline.Warehouse.Facts;

/// <summary>The columns of a fact table in the order loaders bind them.</summary>
internal sealed record FactTable(FactSubject Subject, string Name, IReadOnlyList<string> Columns)
{
    public static readonly FactTable Reading = new(FactSubject.Sample, "reading",
    [
        "run_id", "row_key", "quantity_id", "barcode", "value", "below_limit", "raw_value", "raw_unit", "extract", "replicate",
        "tuber", "slice", "operator", "measured_at", "measured_as", "file_id", "line", "standing",
    ]);

    public static readonly FactTable ControlCheck = new(FactSubject.Control, "control_check",
    [
        "run_id", "row_key", "quantity_id", "material", "value", "below_limit", "raw_value", "raw_unit", "replicate",
        "operator", "measured_at", "measured_as", "file_id", "line", "standing",
    ]);

    public static readonly FactTable FryBatch = new(FactSubject.FryBatch, "fry_batch",
    [
        "run_id", "row_key", "quantity_id", "value", "raw_value", "raw_unit",
        "operator", "measured_at", "measured_as", "file_id", "line", "standing",
    ]);

    public static FactTable Of(FactSubject subject) => subject switch
    {
        FactSubject.Sample => Reading,
        FactSubject.Control => ControlCheck,
        _ => FryBatch,
    };
}
