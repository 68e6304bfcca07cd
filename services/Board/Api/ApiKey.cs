namespace LabPipeline.Board.Api;

/// <summary>A key a program reads with; the key itself is shown once and kept nowhere.</summary>
public sealed record ApiKey
{
    public int KeyId { get; init; }

    public string Name { get; init; } = "";

    public DateTimeOffset MadeAt { get; init; }

    public string MadeBy { get; init; } = "";

    public DateTimeOffset? EndedAt { get; init; }
}
