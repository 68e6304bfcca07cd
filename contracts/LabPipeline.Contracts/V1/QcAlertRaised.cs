namespace LabPipeline.Contracts.V1;

/// <summary>A quality alert opened, or opened again after it had cleared.</summary>
/// <param name="AlertId">The alert in the warehouse.</param>
/// <param name="TimesRaised">How often it has been raised, this time included.</param>
/// <param name="RuleName">The rule that found it.</param>
/// <param name="Level">block, hold or note.</param>
/// <param name="Headline">What, where, number against limit.</param>
public sealed record QcAlertRaised(int AlertId, int TimesRaised, string RuleName, string Level, string Headline);
