namespace LabPipeline.Warehouse.Plan;

/// <summary>What the trial decided before the first reading about how results are computed and judged.</summary>
/// <remarks>
/// <c>DryMatterRelation</c>: name of the relation from specific gravity to dry matter.
/// <c>DarkBelowHunterL</c>: a chip with a lower Hunter L counts as dark.
/// <c>SevereFromScore</c>: a stem-end score at or above it counts as severe.
/// <c>StandardClone</c>: the clone others are compared with.
/// </remarks>
public sealed record ResultRules(string DryMatterRelation, decimal DarkBelowHunterL, int SevereFromScore, string StandardClone);
