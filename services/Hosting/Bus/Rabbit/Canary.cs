namespace LabPipeline.Hosting.Bus.Rabbit;

/// <summary>Goes the whole way of a message, out through the broker and back into the same process, and means nothing else.</summary>
/// <param name="Flight">Which one it is.</param>
public sealed record Canary(long Flight);
