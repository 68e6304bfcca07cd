namespace LabPipeline.Hosting.Bus;

/// <summary>There is no bus at the moment; the outbox keeps the message.</summary>
public sealed class BusDownException(string message) : Exception(message);
