using LabPipeline.Intake.Folders;
using LabPipeline.Intake.Profiles;

namespace LabPipeline.Intake.Storing;

/// <summary>A complete file with the profile that reads it.</summary>
public sealed record ReadyFile(SeenFile File, Profile Profile);
