using LabPipeline.Science.Barcodes;

namespace LabPipeline.Reporting.Labels;

/// <summary>What one label says.</summary>
public sealed record LabelText
{
    /// <summary>The sample's barcode, its last character the check character.</summary>
    public required string Barcode { get; init; }

    public required string Trial { get; init; }

    public required string Plot { get; init; }

    public required string Block { get; init; }

    public required int Pull { get; init; }

    /// <summary>Levels of the treatment, or the blind code in their place.</summary>
    public required string Treatment { get; init; }

    /// <summary>Null for the label of a whole sample.</summary>
    public TuberHalf? Half { get; init; }

    /// <summary>Number of the tuber within its sample; null when halves are pooled.</summary>
    public int? Tuber { get; init; }

    /// <summary>S or F; empty for a whole sample.</summary>
    internal string HalfLetter => Half is { } half ? HalfCode.LetterOf(half).ToString() : "";

    /// <summary>What the symbol holds: the barcode, and for a half -S or -F after it.</summary>
    internal string Code => HalfCode.Write(Barcode, Half);

    /// <summary>Which label it is, for a person who must find it.</summary>
    internal string Name => $"label {Code}{(Tuber is { } tuber ? $" tuber {tuber}" : "")} (plot {Plot})";
}
