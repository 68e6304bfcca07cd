namespace LabPipeline.Warehouse.Alerts;

/// <summary>A quality alert as the warehouse holds it. Its fingerprint says what it is about; raising it again keeps the row.</summary>
public sealed record Alert
{
    public int AlertId { get; init; }

    /// <summary>Rule, subject and window as readable text; one alert each for ever.</summary>
    public string Fingerprint { get; init; } = "";

    public string RuleName { get; init; } = "";

    /// <summary>One of <see cref="AlertLevels"/>.</summary>
    public string Level { get; init; } = "";

    /// <summary>The evidence that decides about this alert, such as <c>sample:26K70012C</c>: evaluated again as a whole.</summary>
    public string Scope { get; init; } = "";

    public string? TrialCode { get; init; }

    public int? PullNo { get; init; }

    public string? Barcode { get; init; }

    public string Headline { get; init; } = "";

    public string Advice { get; init; } = "";

    /// <summary>What was found and compared, as a JSON object of texts in reading order.</summary>
    public string Facts { get; init; } = "";

    /// <summary>One of <see cref="AlertStates"/>.</summary>
    public string State { get; init; } = "";

    public int TimesRaised { get; init; }

    /// <summary>When the present raising began.</summary>
    public DateTimeOffset OpenedAt { get; init; }

    public DateTimeOffset ChangedAt { get; init; }

    public DateTimeOffset? ClearedAt { get; init; }

    public DateTimeOffset? AcknowledgedAt { get; init; }

    public string? AcknowledgedBy { get; init; }

    public DateTimeOffset? SettledAt { get; init; }

    public string? SettledBy { get; init; }

    public string? SettledWhy { get; init; }

    /// <summary>How the change log names the alert.</summary>
    public static string SubjectOf(int alertId) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"alert:{alertId}");
}
