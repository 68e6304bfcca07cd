using LabPipeline.Science.Quantities;

namespace LabPipeline.Intake;

/// <summary>What is special to one kind of instrument: its name, its quantities, its sample profiles.</summary>
/// <param name="Kind">The quantities its profiles may name.</param>
/// <param name="FolderName">Name of its drop and profile folders, and of its service: <c>sugar</c>.</param>
public sealed record IntakeKind(QuantityKind Kind, string FolderName)
{
    /// <summary>Name in heartbeats, leases and the change log.</summary>
    public string ServiceName => "intake-" + FolderName;
}
