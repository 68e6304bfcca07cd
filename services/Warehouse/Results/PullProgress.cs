namespace LabPipeline.Warehouse.Results;

/// <summary>How far one expected quantity of a pull has come.</summary>
public sealed record PullProgress
{
    public int PullNo { get; init; }

    public DateOnly DueOn { get; init; }

    public DateOnly OpensOn { get; init; }

    public DateOnly ClosesOn { get; init; }

    public string Quantity { get; init; } = "";

    public int SamplesPlanned { get; init; }

    /// <summary>Samples with as many readings of the quantity in effect as the plan expects.</summary>
    public int SamplesMeasured { get; init; }
}
