namespace LabPipeline.Quality.Rules;

/// <summary>A file that stays in its drop folder because it is incomplete or cannot be opened.</summary>
public sealed record HeldFileEvidence : IEvidence
{
    public const string Kind = "held:";

    public string Folder { get; init; } = "";

    public string Name { get; init; } = "";

    public string ReasonCode { get; init; } = "";

    public string Reason { get; init; } = "";

    public DateTimeOffset FirstSeenAt { get; init; }

    public DateTimeOffset Now { get; init; }

    public string Scope => Kind + Subject;

    public string Subject => Folder + "/" + Name;

    public string Title => $"File {Name} in {Folder}";

    public string? TrialCode => null;

    public int? PullNo => null;

    public string? Barcode => null;
}
