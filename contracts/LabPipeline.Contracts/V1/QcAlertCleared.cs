namespace LabPipeline.Contracts.V1;

/// <summary>The cause of a quality alert went away.</summary>
/// <param name="AlertId">The alert in the warehouse.</param>
/// <param name="TimesRaised">The raising that this clears.</param>
/// <param name="RuleName">The rule that had found it.</param>
public sealed record QcAlertCleared(int AlertId, int TimesRaised, string RuleName);
