using LabPipeline.Contracts.V1;

namespace LabPipeline.Hosting.Bus;

/// <summary>Finds the contract behind the type name an outbox row carries.</summary>
public static class MessageTypes
{
    private static readonly Dictionary<string, Type> ByName = typeof(ReadingsRecorded).Assembly.GetExportedTypes()
        .Where(type => type.Namespace!.StartsWith("LabPipeline.Contracts.", StringComparison.Ordinal))
        .ToDictionary(type => type.FullName!, StringComparer.Ordinal);

    /// <summary>All contracts.</summary>
    public static IReadOnlyCollection<Type> All => ByName.Values;

    /// <summary>The contract called <paramref name="name"/>, or null when this program is older than the message.</summary>
    public static Type? Find(string name) => ByName.GetValueOrDefault(name);
}
