namespace LabPipeline.Warehouse.Results;

/// <summary>How far one expected measurement of a sample is.</summary>
public sealed record MeasurementState
{
    public string Barcode { get; init; } = "";

    public int QuantityId { get; init; }

    /// <summary>One of <see cref="MeasurementStates"/>.</summary>
    public string State { get; init; } = "";

    /// <summary>Readings in effect.</summary>
    public int Readings { get; init; }

    /// <summary>Why readings were set aside, with who did it; empty otherwise.</summary>
    public string Reason { get; init; } = "";
}
