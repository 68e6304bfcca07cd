namespace LabPipeline.Station.Demo;

/// <summary>A file as an instrument leaves it.</summary>
/// <remarks>
/// <c>Kind</c>: the drop folder, such as <c>sugar</c>.
/// <c>WrittenAt</c>: when its last line was written.
/// </remarks>
public sealed record DemoFile(string Kind, string Name, ReadOnlyMemory<byte> Bytes, DateTimeOffset WrittenAt);
