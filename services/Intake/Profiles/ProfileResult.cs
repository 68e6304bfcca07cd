using System.Diagnostics.CodeAnalysis;

namespace LabPipeline.Intake.Profiles;

/// <summary>A profile, or everything that keeps the document from being one.</summary>
public sealed record ProfileResult(string DocumentName, Profile? Profile, IReadOnlyList<ProfileFault> Faults)
{
    [MemberNotNullWhen(true, nameof(Profile))]
    public bool IsValid => Profile is not null;

    /// <summary>One sentence for each fault.</summary>
    public IReadOnlyList<string> Describe() => [.. Faults.Select(fault => fault.Describe(DocumentName))];
}
