using LabPipeline.Intake.Profiles;

namespace LabPipeline.Intake.Reading;

/// <summary>A <see cref="QuantityRule"/> with its columns found.</summary>
internal sealed record BoundQuantity(QuantityRule Rule, BoundSource Value, int UnitColumn)
{
    public static BoundQuantity Of(QuantityRule rule, IReadOnlyDictionary<string, int> columns) => new(
        rule, BoundSource.Of(rule.Value, columns), rule.UnitColumn is { } name ? columns[name] : -1);
}
