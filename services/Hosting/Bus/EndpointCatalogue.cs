using LabPipeline.Contracts.V1;

namespace LabPipeline.Hosting.Bus;

/// <summary>Every queue of the pipeline, whichever process serves it.</summary>
/// <remarks>
/// Each process declares them all at start. A producer that started before its consumer's first start would otherwise publish to nobody,
/// and the broker would confirm it.
/// </remarks>
public static class EndpointCatalogue
{
    public static IReadOnlyList<LabEndpoint> All { get; } =
    [
        new("quality-readings-recorded", typeof(ReadingsRecorded)),
        new("quality-readings-changed", typeof(ReadingsChanged)),
        new("quality-trial-plan-loaded", typeof(TrialPlanLoaded)),
        new("quality-file-refused", typeof(FileRefused)),
        new("notifier-qc-alert-raised", typeof(QcAlertRaised)),
        new("notifier-qc-alert-cleared", typeof(QcAlertCleared)),
    ];

    /// <exception cref="InvalidOperationException">The catalogue does not hold it, so other processes would not declare it.</exception>
    public static LabEndpoint Get(string name, Type message) => All.FirstOrDefault(endpoint => endpoint.Name == name && endpoint.Message == message)
        ?? throw new InvalidOperationException($"{nameof(EndpointCatalogue)} has no '{name}' for {message.Name}; add it, so that every process declares it.");
}
