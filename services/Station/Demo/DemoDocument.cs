namespace LabPipeline.Station.Demo;

/// <summary>A document the laboratory wrote: a plan or a profile.</summary>
/// <remarks>
/// <c>Folder</c>: below the data folder.
/// </remarks>
public sealed record DemoDocument(string Folder, string Name, string Text);
