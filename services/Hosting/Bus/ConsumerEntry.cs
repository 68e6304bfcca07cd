namespace LabPipeline.Hosting.Bus;

/// <summary>A consumer of this process: the full name of its message type and its own name.</summary>
public sealed record ConsumerEntry(string MessageType, string ConsumerName);
