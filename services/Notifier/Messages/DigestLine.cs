namespace LabPipeline.Notifier.Messages;

/// <summary>One alert of a digest.</summary>
/// <param name="AlertId">The alert in the warehouse.</param>
/// <param name="Label">Level or event, as in the subject of a single message.</param>
/// <param name="Headline">What, where, number against limit.</param>
/// <param name="TrialCode">The trial, when the alert belongs to one.</param>
/// <param name="PullNo">The pull, when the alert belongs to one.</param>
public sealed record DigestLine(int AlertId, string Label, string Headline, string? TrialCode = null, int? PullNo = null);
