namespace LabPipeline.Conventions.Tests;

/// <summary>Who may reference whom, as docs/architecture.md draws it.</summary>
public sealed class ReferenceRulesTests
{
    private static readonly string[] Libraries = ["Contracts", "Science", "Warehouse", "Hosting", "Intake"];

    private static readonly Dictionary<string, string[]> Allowed = new()
    {
        ["Contracts"] = [],
        ["Science"] = [],
        ["Warehouse"] = ["Contracts", "Science"],
        ["Hosting"] = ["Contracts", "Warehouse"],
        ["Intake"] = ["Contracts", "Hosting", "Science", "Warehouse"],
        ["Reporting"] = ["Science", "Warehouse"],
    };

    // Who shows what another makes shows it by that one's code, and runs none of it: docs/decisions/0013.
    private static readonly Dictionary<string, string[]> Shown = new() { ["Board"] = ["Quality", "Reporting"] };

    [Fact]
    public void Libraries_WhenTheyReferenceOurOwn_ReferenceOnlyWhatLiesBelow()
    {
        foreach (var (library, allowed) in Allowed)
        {
            var references = ProductAssemblies.ReferencesOf(ProductAssemblies.Get(library)).Select(name => name["LabPipeline.".Length..]);

            Assert.Empty(references.Except(allowed).Select(name => $"{library} references {name}"));
        }
    }

    [Fact]
    public void Services_WhenTheyReferenceOurOwn_NeverReferenceEachOther()
    {
        foreach (var (name, assembly) in ProductAssemblies.All)
        {
            var service = name["LabPipeline.".Length..];
            if (service != "Station" && !Libraries.Contains(service))
            {
                var references = ProductAssemblies.ReferencesOf(assembly).Select(reference => reference["LabPipeline.".Length..]);

                Assert.Empty(references.Except(Libraries).Except(Shown.GetValueOrDefault(service, [])).Select(other => $"{service} references {other}"));
            }
        }
    }

    [Fact]
    public void Science_WhenItReferencesAnything_ReferencesTheBaseClassLibraryOnly()
    {
        var references = ProductAssemblies.Get("Science").GetReferencedAssemblies().Select(name => name.Name!);

        Assert.All(references, name => Assert.StartsWith("System.", name, StringComparison.Ordinal));
    }

    [Fact]
    [Shows(43)]
    public void MassTransit_WhenReferenced_IsTheEightFiveLine()
    {
        var version = ProductAssemblies.Get("Hosting").GetReferencedAssemblies().Single(name => name.Name == "MassTransit").Version!;

        Assert.Equal(8, version.Major);
    }
}
