namespace LabPipeline.Warehouse.Plan.Rows;

/// <summary>One coefficient of a planned contrast.</summary>
internal sealed record ContrastRow
{
    public string TrialCode { get; init; } = "";

    public string Name { get; init; } = "";

    public string Factors { get; init; } = "";

    public string Cell { get; init; } = "";

    public decimal Coefficient { get; init; }

    public int Position { get; init; }

    public DateTimeOffset StatedAt { get; init; }

    public static IReadOnlyList<ContrastRow> Of(TrialPlan plan, DateTimeOffset now) =>
    [
        .. plan.Contrasts.SelectMany((contrast, index) => contrast.Coefficients.Where(pair => pair.Value != 0).Select(pair => new ContrastRow
        {
            TrialCode = plan.Code,
            Name = contrast.Name,
            Factors = string.Join(':', contrast.Factors),
            Cell = pair.Key,
            Coefficient = pair.Value,
            Position = index + 1,
            StatedAt = now,
        })),
    ];
}
