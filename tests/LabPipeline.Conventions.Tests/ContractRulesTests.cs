using System.Reflection;

namespace LabPipeline.Conventions.Tests;

/// <summary>Contracts are an address for other processes: their shape and names change only on purpose.</summary>
public sealed class ContractRulesTests
{
    private static readonly Type[] Contracts = ProductAssemblies.Get("Contracts").GetExportedTypes();

    [Fact]
    public void Contracts_WhenListed_AreTheApprovedOnes()
    {
        string[] approved =
        [
            "LabPipeline.Contracts.V1.FileRefused(Int32 FileId, String Name, String ReasonCode)",
            "LabPipeline.Contracts.V1.QcAlertCleared(Int32 AlertId, Int32 TimesRaised, String RuleName)",
            "LabPipeline.Contracts.V1.QcAlertRaised(Int32 AlertId, Int32 TimesRaised, String RuleName, String Level, String Headline)",
            "LabPipeline.Contracts.V1.ReadingsChanged(IReadOnlyList`1 SampleBarcodes, String Why)",
            "LabPipeline.Contracts.V1.ReadingsRecorded(Int32 FileId, Int32 Part, Int32 Parts, IReadOnlyList`1 SampleBarcodes, Int32 NewCount, Int32 ConflictingCount)",
            "LabPipeline.Contracts.V1.TrialPlanLoaded(String TrialCode, IReadOnlyList`1 JoinedBarcodes, IReadOnlyList`1 FileIds)",
        ];

        Assert.Equal(approved, Contracts.Select(Describe).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Contracts_WhenLookedAt_AreSealedRecordsInAVersionedNamespace() => Assert.All(Contracts, type =>
    {
        Assert.True(type.IsSealed, type.Name);
        Assert.NotNull(type.GetMethod("<Clone>$"));
        Assert.Matches(@"^LabPipeline\.Contracts\.V\d+$", type.Namespace!);
    });

    private static string Describe(Type type)
    {
        var constructor = type.GetConstructors(BindingFlags.Public | BindingFlags.Instance).OrderByDescending(candidate => candidate.GetParameters().Length).First();
        return $"{type.FullName}({string.Join(", ", constructor.GetParameters().Select(parameter => $"{parameter.ParameterType.Name} {parameter.Name}"))})";
    }
}
