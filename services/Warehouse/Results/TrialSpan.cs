namespace LabPipeline.Warehouse.Results;

/// <summary>A trial and the time its pulls take, from the first window's first day to the last window's last.</summary>
public sealed record TrialSpan
{
    public string TrialCode { get; init; } = "";

    public string Title { get; init; } = "";

    public int Season { get; init; }

    /// <summary>IANA name of the zone whose calendar the pulls follow.</summary>
    public string TimeZone { get; init; } = "";

    public DateOnly FirstOpensOn { get; init; }

    public DateOnly LastClosesOn { get; init; }
}
