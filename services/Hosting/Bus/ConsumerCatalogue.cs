namespace LabPipeline.Hosting.Bus;

/// <summary>The consumers that run in this process, so that messages forgotten by the in-process bus can go out again.</summary>
public sealed class ConsumerCatalogue(IEnumerable<ConsumerEntry> entries)
{
    public IReadOnlyList<ConsumerEntry> Entries { get; } = [.. entries];
}
