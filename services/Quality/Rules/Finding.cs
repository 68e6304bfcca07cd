namespace LabPipeline.Quality.Rules;

/// <summary>What a rule has to say: what, where, number against limit, and what to do now.</summary>
public sealed record Finding
{
    /// <summary>Window of a finding that says the rule could not be evaluated.</summary>
    public const string NotEvaluatedWindow = "not evaluated";

    public required string RuleName { get; init; }

    public required FindingLevel Level { get; init; }

    /// <summary>The evidence that decides about it.</summary>
    public required string Scope { get; init; }

    /// <summary>What it is about, such as a barcode.</summary>
    public required string Subject { get; init; }

    /// <summary>Tells findings of one rule about one subject apart.</summary>
    public required string Window { get; init; }

    public required string Headline { get; init; }

    public required string Advice { get; init; }

    public required FactSheet Facts { get; init; }

    public string? TrialCode { get; init; }

    public int? PullNo { get; init; }

    public string? Barcode { get; init; }

    /// <summary>One for ever for the same matter, however often it is evaluated.</summary>
    public string Fingerprint => $"{RuleName}|{Subject}|{Window}";

    public bool IsNotEvaluated => Window == NotEvaluatedWindow;
}
