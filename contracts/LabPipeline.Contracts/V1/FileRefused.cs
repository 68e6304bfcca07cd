namespace LabPipeline.Contracts.V1;

/// <summary>A complete file could not be read under its profile; nothing of it was stored.</summary>
/// <param name="FileId">The file in the warehouse's ledger.</param>
/// <param name="Name">File name as it arrived.</param>
/// <param name="ReasonCode">Stable code of the first fault.</param>
public sealed record FileRefused(int FileId, string Name, string ReasonCode);
