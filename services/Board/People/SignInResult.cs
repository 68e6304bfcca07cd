namespace LabPipeline.Board.People;

/// <summary>How a try to sign in ended.</summary>
/// <param name="Person">Who signed in; null when nobody did.</param>
/// <param name="LockedUntil">Until when no try counts, after too many failures; null otherwise.</param>
public sealed record SignInResult(Person? Person, DateTimeOffset? LockedUntil);
