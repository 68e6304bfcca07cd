namespace LabPipeline.Notifier.Messages;

/// <summary>Many alerts in one message.</summary>
public sealed record DigestNotice : Notice
{
    public const int MostLines = 50;

    /// <summary>The bench day whose alerts these are; null when they came too fast to be told one by one.</summary>
    public DateOnly? Day { get; init; }

    public required int Total { get; init; }

    public required int Blocks { get; init; }

    public required int FirstAlertId { get; init; }

    public required int LastAlertId { get; init; }

    /// <summary>The most urgent ones, at most <see cref="MostLines"/>.</summary>
    public required IReadOnlyList<DigestLine> Lines { get; init; }
}
