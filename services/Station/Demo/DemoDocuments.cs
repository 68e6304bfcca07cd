using System.Reflection;
using LabPipeline.Intake;

namespace LabPipeline.Station.Demo;

/// <summary>The plan of the demonstration and the sample profiles that ship with the intake services.</summary>
internal static class DemoDocuments
{
    public const string PlanName = "trial-plan.json";

    private const string PlanFolder = "plans";
    private const string Profiles = "Profiles/";

    public static IReadOnlyList<DemoDocument> Plan() =>
        [.. new[] { PlanName, "plots.csv" }.Select(name => new DemoDocument(PlanFolder, name, TextOf(Assembly.GetExecutingAssembly(), "Demo/Plan/" + name)))];

    public static IReadOnlyList<DemoDocument> SampleProfiles() =>
    [
        .. StationModules.All().OfType<IntakeModule>().SelectMany(module =>
        {
            var assembly = module.GetType().Assembly;
            return assembly.GetManifestResourceNames()
                .Where(name => name.StartsWith(Profiles, StringComparison.Ordinal))
                .Order(StringComparer.Ordinal)
                .Select(name => new DemoDocument("profiles/" + module.Kind.FolderName, name[Profiles.Length..], TextOf(assembly, name)));
        }),
    ];

    private static string TextOf(Assembly assembly, string resource)
    {
        using var reader = new StreamReader(assembly.GetManifestResourceStream(resource)!);
        return reader.ReadToEnd();
    }
}
