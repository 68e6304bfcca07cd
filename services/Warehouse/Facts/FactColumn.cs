namespace LabPipeline.Warehouse.Facts;

/// <summary>How one column of a fact travels to SQL Server.</summary>
internal sealed record FactColumn(string Name, string Type, Type ClrType, Func<StagedFact, object?> Value)
{
    private static readonly Dictionary<string, FactColumn> ByName = new FactColumn[]
    {
        new("run_id", "int", typeof(int), staged => (int)staged.Run),
        Text("row_key", FactText.LongestRowKey, staged => staged.Fact.RowKey.Text),
        new("quantity_id", "smallint", typeof(short), staged => (short)staged.Fact.QuantityId),
        Text("barcode", FactText.LongestBarcode, staged => staged.Fact.Barcode),
        Text("material", FactText.LongestMaterial, staged => staged.Fact.Material),
        new("value", "decimal(28, 12)", typeof(decimal), staged => staged.Fact.Value),
        new("below_limit", "bit", typeof(bool), staged => staged.Fact.BelowLimit),
        Text("raw_value", FactText.LongestRawValue, staged => staged.Fact.RawValue.Text),
        Text("raw_unit", FactText.LongestRawUnit, staged => staged.Fact.RawUnit),
        Text("extract", FactText.LongestExtract, staged => staged.Fact.Extract),
        new("replicate", "int", typeof(int), staged => staged.Fact.Replicate),
        new("tuber", "int", typeof(int), staged => staged.Fact.Tuber),
        new("slice", "int", typeof(int), staged => staged.Fact.Slice),
        Text("operator", FactText.LongestOperator, staged => staged.Fact.Operator),
        new("measured_at", "datetimeoffset(3)", typeof(DateTimeOffset), staged => staged.Fact.MeasuredAt is { } at ? DapperTypes.Stored(at) : null),
        Text("measured_as", FactText.LongestMeasuredAs, staged => staged.Fact.MeasuredAs.Text),
        new("line", "int", typeof(int), staged => staged.Fact.Line),
    }.ToDictionary(column => column.Name);

    private static readonly FactColumn Sequence = new("seq", "int", typeof(int), staged => staged.Sequence);

    public bool IsText => ClrType == typeof(string);

    /// <summary>The type in the staging table; its texts compare like those of the warehouse, whatever the server's own collation.</summary>
    public string StageType => IsText ? Type + " collate Latin1_General_BIN2" : Type;

    /// <summary>The place in the file, then what a file brings for <paramref name="table"/>; file and standing are given by the statement.</summary>
    public static IReadOnlyList<FactColumn> StagedFor(FactTable table) =>
        [Sequence, .. table.Columns.Where(ByName.ContainsKey).Select(name => ByName[name])];

    private static FactColumn Text(string name, int length, Func<StagedFact, object?> value) => new(name, $"nvarchar({length})", typeof(string), value);
}
