namespace LabPipeline.Board.Api;

/// <summary>One quality alert.</summary>
public sealed record ApiAlert
{
    public int Number { get; init; }

    public string RuleName { get; init; } = "";

    public string Level { get; init; } = "";

    public string State { get; init; } = "";

    public string? Trial { get; init; }

    public int? Pull { get; init; }

    public string? Barcode { get; init; }

    public string Headline { get; init; } = "";

    public string Advice { get; init; } = "";

    /// <summary>What was found and compared, as a JSON object of texts.</summary>
    public string Facts { get; init; } = "";

    public DateTimeOffset OpenedAt { get; init; }

    public DateTimeOffset? ClearedAt { get; init; }

    public DateTimeOffset? SeenAt { get; init; }

    public string? SeenBy { get; init; }

    public DateTimeOffset? SettledAt { get; init; }

    public string? SettledBy { get; init; }

    public string? SettledWhy { get; init; }
}
