namespace LabPipeline.Warehouse.Results;

/// <summary>A computed result of a sample and the readings it came from.</summary>
public sealed record SampleResultRow
{
    /// <summary>Decimals kept of <see cref="Value"/> and <see cref="S"/>.</summary>
    public const int StoredDecimals = 12;

    public string Barcode { get; init; } = "";

    public int QuantityId { get; init; }

    /// <summary>The result, or the limit it lies below when <see cref="BelowLimit"/>.</summary>
    public decimal Value { get; init; }

    public bool BelowLimit { get; init; }

    /// <summary>Test results behind it: extracts, pieces or chips, never repeat readings.</summary>
    public int N { get; init; }

    /// <summary>Standard deviation between those, when there are two or more.</summary>
    public decimal? S { get; init; }

    /// <summary>How the result was made from them.</summary>
    public string Basis { get; init; } = "";

    /// <summary>Reading identifiers as a sorted JSON array.</summary>
    public string FromReadings { get; init; } = "";

    /// <summary>Whether a reading behind it is in doubt because a control beside it failed.</summary>
    public bool InDoubt { get; init; }

    public DateTimeOffset ComputedAt { get; init; }

    /// <summary>Whether both say the same; when they were computed does not matter.</summary>
    public bool SaysTheSameAs(SampleResultRow other) =>
        Barcode == other.Barcode && QuantityId == other.QuantityId && BelowLimit == other.BelowLimit && N == other.N
        && Same(Value, other.Value) && Same(S, other.S) && Basis == other.Basis && FromReadings == other.FromReadings
        && InDoubt == other.InDoubt;

    // SQLite keeps 15 digits; what was written must be recognised when it comes back.
    private static bool Same(decimal? left, decimal? right) =>
        left is { } a && right is { } b ? (decimal)(double)a == (decimal)(double)b : left is null && right is null;
}
