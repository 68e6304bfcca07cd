using System.Reflection;

namespace LabPipeline.Conventions.Tests;

/// <summary>The product's own assemblies, found beside this test, which references those that nothing else does.</summary>
internal static class ProductAssemblies
{
    public static IReadOnlyDictionary<string, Assembly> All { get; } = Collect();

    public static Assembly Get(string shortName) => All["LabPipeline." + shortName];

    public static IReadOnlyList<string> ReferencesOf(Assembly assembly) =>
        [.. assembly.GetReferencedAssemblies().Select(name => name.Name!).Where(name => name.StartsWith("LabPipeline.", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    private static Dictionary<string, Assembly> Collect()
    {
        var found = new Dictionary<string, Assembly>(StringComparer.Ordinal);
        foreach (var path in Directory.EnumerateFiles(AppContext.BaseDirectory, "LabPipeline.*.dll"))
        {
            var name = Path.GetFileNameWithoutExtension(path);
            if (!name.EndsWith(".Tests", StringComparison.Ordinal) && name != "LabPipeline.Testing")
            {
                found.Add(name, Assembly.Load(name));
            }
        }

        return found;
    }
}
