namespace LabPipeline.Intake.Profiles;

/// <summary>The profile for a file, or the reason why none can be chosen.</summary>
public sealed record ProfileChoice(Profile? Profile, string ReasonCode, string Reason);
