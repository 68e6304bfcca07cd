namespace LabPipeline.Board.Api;

/// <summary>One result of one sample with its place in the trial. Below its limit, the value is the limit.</summary>
public sealed record ApiResult
{
    public string Barcode { get; init; } = "";

    public string Trial { get; init; } = "";

    public int Pull { get; init; }

    public DateOnly PullDueOn { get; init; }

    public string Plot { get; init; } = "";

    public string Block { get; init; } = "";

    public string CloneName { get; init; } = "";

    public string Treatment { get; init; } = "";

    public string Bay { get; init; } = "";

    public string Quantity { get; init; } = "";

    public decimal Value { get; init; }

    public string Unit { get; init; } = "";

    public bool BelowLimit { get; init; }

    /// <summary>Whether a reading behind it is in doubt because a control beside it failed.</summary>
    public bool InDoubt { get; init; }

    /// <summary>Test results it was made from.</summary>
    public int N { get; init; }

    /// <summary>Their standard deviation.</summary>
    public decimal? S { get; init; }

    public string Basis { get; init; } = "";

    public DateTimeOffset ComputedAt { get; init; }
}
