namespace LabPipeline.Intake.Profiles;

/// <summary>What the readings of a row belong to. Null where the files do not say.</summary>
public sealed record IdentityRule
{
    public required CellSource Instrument { get; init; }

    public required CellSource Run { get; init; }

    public CellSource? Barcode { get; init; }

    public CellSource? Operator { get; init; }

    public CellSource? Extract { get; init; }

    public CellSource? Replicate { get; init; }

    public CellSource? Tuber { get; init; }

    public CellSource? Slice { get; init; }

    /// <summary>Control material or fry batch, for files that are wholly about one of them.</summary>
    public CellSource? Material { get; init; }
}
