namespace LabPipeline.Intake.Profiles;

/// <summary>Reads profile documents (docs/specs/intake-profile.md).</summary>
public static class ProfileDocument
{
    /// <summary>The only document schema there is so far.</summary>
    public const int Schema = 1;

    /// <summary>The profile <paramref name="json"/> describes, or every fault in it.</summary>
    public static ProfileResult Parse(string json, string name) => throw new NotSupportedException(name + json);
}
