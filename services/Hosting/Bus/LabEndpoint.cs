namespace LabPipeline.Hosting.Bus;

/// <summary>A queue and the one message type it takes.</summary>
/// <param name="Name">Queue name with its service's prefix, such as <c>quality-readings-recorded</c>; also the consumer's name in the inbox.</param>
/// <param name="Message">The contract.</param>
public sealed record LabEndpoint(string Name, Type Message);
