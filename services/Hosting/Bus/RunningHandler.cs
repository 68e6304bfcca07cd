namespace LabPipeline.Hosting.Bus;

/// <summary>A message being handled: which, from which queue, and since when.</summary>
public sealed class RunningHandler(string endpoint, Guid? messageId, DateTimeOffset since)
{
    public string Endpoint => endpoint;

    public Guid? MessageId => messageId;

    public DateTimeOffset Since => since;
}
