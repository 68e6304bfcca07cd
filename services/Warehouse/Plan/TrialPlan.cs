namespace LabPipeline.Warehouse.Plan;

/// <summary>A season's trial as it was planned. Made by <see cref="PlanDocument"/>, so every instance is consistent.</summary>
public sealed record TrialPlan
{
    public required string Code { get; init; }

    /// <summary>Two or three characters that stand for the trial in its barcodes.</summary>
    public required string Mark { get; init; }

    public required string Title { get; init; }

    public required string Question { get; init; }

    /// <summary>Year of harvest.</summary>
    public required int Season { get; init; }

    public required string Site { get; init; }

    /// <summary>IANA name of the time zone in which dates and bench days of the trial are meant.</summary>
    public required string TimeZone { get; init; }

    public required DateOnly HarvestedOn { get; init; }

    public required TrialDesign Design { get; init; }

    public required IReadOnlyList<TrialBay> Bays { get; init; }

    /// <summary>In the order of the document: barcodes are numbered by it.</summary>
    public required IReadOnlyList<TrialPlot> Plots { get; init; }

    public required IReadOnlyList<TrialPull> Pulls { get; init; }

    public required SampleSize SampleSize { get; init; }

    public required ResultRules Rules { get; init; }

    public required IReadOnlyList<ExpectedMeasurement> Expected { get; init; }

    public required IReadOnlyList<LabRepeatability> Repeatability { get; init; }

    /// <summary>The trial's own questions about its means, in the order of the document.</summary>
    public IReadOnlyList<PlannedContrast> Contrasts { get; init; } = [];

    /// <summary>SHA-256 of the document, the plots file included.</summary>
    public required string Sha256 { get; init; }

    public string CloneOf(TrialPlot plot) => plot.Levels[Design.CloneFactor];

    /// <summary>What was done to a plot besides choosing its clone: "nitrogen 200 kg/ha; vine kill early"; "none" when the clone is all.</summary>
    public string TreatmentOf(TrialPlot plot)
    {
        var others = Design.Factors.Where(factor => factor.Name != Design.CloneFactor).ToList();
        return others.Count == 0 ? "none" : string.Join("; ", others.Select(factor => factor.Describe(plot.Levels[factor.Name])));
    }
}
