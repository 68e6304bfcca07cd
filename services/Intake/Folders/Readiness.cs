namespace LabPipeline.Intake.Folders;

/// <summary>Whether a file can be taken now.</summary>
/// <param name="State">The verdict.</param>
/// <param name="ReasonCode">Stable code when it is held.</param>
/// <param name="Reason">One sentence for a person when it is held.</param>
public sealed record Readiness(ReadinessState State, string ReasonCode = "", string Reason = "")
{
    public static readonly Readiness Ready = new(ReadinessState.Ready);

    public static readonly Readiness Settling = new(ReadinessState.Settling);

    public static Readiness Held(string code, string reason) => new(ReadinessState.Held, code, reason);
}
