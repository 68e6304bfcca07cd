namespace LabPipeline.Warehouse.Controls;

/// <summary>Limits of one control on one instrument, with who decided them, when, why, and from which runs.</summary>
public sealed record ControlLimitRow
{
    public string Instrument { get; init; } = "";

    public string Material { get; init; } = "";

    public int QuantityId { get; init; }

    /// <summary>Counted up with every decision.</summary>
    public int Version { get; init; }

    /// <summary>One of <see cref="ControlLimitKinds"/>.</summary>
    public string Kind { get; init; } = "";

    public decimal Centre { get; init; }

    /// <summary>Standard error of a point; null for a stated target.</summary>
    public decimal? Sigma { get; init; }

    public decimal Lower { get; init; }

    public decimal Upper { get; init; }

    /// <summary>Runs they were computed from; 0 for a stated target.</summary>
    public int Runs { get; init; }

    /// <summary>Names of these runs as a JSON array.</summary>
    public string FromRuns { get; init; } = "[]";

    /// <summary>Controls measured from this instant on are held against them.</summary>
    public DateTimeOffset InForceFrom { get; init; }

    public DateTimeOffset DecidedAt { get; init; }

    public string DecidedBy { get; init; } = "";

    public string Why { get; init; } = "";
}
