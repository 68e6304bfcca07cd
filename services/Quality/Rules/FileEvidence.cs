using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Quality.Rules;

/// <summary>A file of the ledger and what became of it.</summary>
public sealed record FileEvidence : IEvidence
{
    public string Sha256 { get; init; } = "";

    public string Name { get; init; } = "";

    public string Kind { get; init; } = "";

    /// <summary>One of <see cref="FileState"/>.</summary>
    public string State { get; init; } = "";

    public string? ReasonCode { get; init; }

    public string? Reason { get; init; }

    /// <summary>A file of the same name that came into the same folder later and was read; null when there is none.</summary>
    public string? ReplacedBy { get; init; }

    /// <summary>Barcodes with a good check character that no plan holds.</summary>
    public IReadOnlyList<string> UnknownBarcodes { get; init; } = [];

    public string Scope => ScopeOf(Sha256);

    public string Subject => Sha256;

    public string Title => "File " + Name;

    public string? TrialCode => null;

    public int? PullNo => null;

    public string? Barcode => null;

    public static string ScopeOf(string sha256) => "file:" + sha256;
}
