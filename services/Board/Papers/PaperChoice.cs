using LabPipeline.Reporting.Bench;
using LabPipeline.Reporting.Planning;

namespace LabPipeline.Board.Papers;

/// <summary>What is printed, and what could be chosen instead.</summary>
public sealed record PaperChoice
{
    public required IReadOnlyList<string> Trials { get; init; }

    public required IReadOnlyList<int> Pulls { get; init; }

    public required IReadOnlyList<string> Bays { get; init; }

    /// <summary>Null for all bays.</summary>
    public string? Bay { get; init; }

    /// <summary>One of <see cref="PaperKinds"/>.</summary>
    public required string Paper { get; init; }

    /// <summary>Place of the first label on its sheet.</summary>
    public required int First { get; init; }

    /// <summary>The pull with the samples of the chosen bays.</summary>
    public required BenchPull Pull { get; init; }

    /// <summary>Why today is outside the pull's window; null when it is not.</summary>
    public string? Untimely { get; init; }

    public IReadOnlyList<PullOverlap> Overlaps { get; init; } = [];

    public bool IsLabels => Paper != PaperKinds.PickList;
}
