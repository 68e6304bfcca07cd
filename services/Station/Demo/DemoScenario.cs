using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Station.Demo;

/// <summary>A season of an invented laboratory: its plan, profiles and instrument files, with what was planted in them.</summary>
/// <remarks>
/// The same on every machine: it follows from one number and asks neither the clock nor the system for anything. Laboratory, clones, field and
/// people do not exist.
/// </remarks>
public sealed record DemoScenario
{
    public required TrialPlan Plan { get; init; }

    /// <summary>The plan with its plots file, and the profiles of the instruments.</summary>
    public required IReadOnlyList<DemoDocument> Documents { get; init; }

    /// <summary>In the order they were written.</summary>
    public required IReadOnlyList<DemoFile> Files { get; init; }

    /// <summary>Good files of the same names for those that cannot be read; dropping them puts things right.</summary>
    public required IReadOnlyList<DemoFile> Corrections { get; init; }

    public required IReadOnlyList<PlantedTrouble> Troubles { get; init; }

    /// <summary>Whether nothing was planted.</summary>
    public bool IsClean { get; private init; }

    /// <param name="clean">Nothing goes wrong in the whole season.</param>
    public static DemoScenario Create(bool clean = false)
    {
        var documents = DemoDocuments.Plan();
        var plan = Read(documents);
        var sessions = new DemoBench(plan, clean).Sessions().ToList();
        var files = new DemoFileTroubles(new DemoFiles(TimeZoneInfo.FindSystemTimeZoneById(plan.TimeZone), clean), plan, clean);
        return new DemoScenario
        {
            Plan = plan,
            Documents = [.. documents, .. DemoDocuments.SampleProfiles()],
            Files = [.. sessions.SelectMany(files.Of).OrderBy(file => file.WrittenAt).ThenBy(file => file.Name, StringComparer.Ordinal)],
            Corrections = files.Corrections,
            Troubles = clean ? [] : DemoTroubles.Of(new DemoPlaces(plan, sessions)),
            IsClean = clean,
        };
    }

    private static TrialPlan Read(IReadOnlyList<DemoDocument> documents)
    {
        string? Text(string name) => documents.FirstOrDefault(document => document.Name == name)?.Text;
        var result = PlanDocument.Parse(Text(DemoDocuments.PlanName)!, DemoDocuments.PlanName, Text);
        return result.IsValid
            ? result.Plan
            : throw new InvalidOperationException(string.Join(Environment.NewLine, result.Faults.Select(fault => fault.Describe(DemoDocuments.PlanName))));
    }
}
