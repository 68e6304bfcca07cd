using LabPipeline.Intake.Profiles;

namespace LabPipeline.Intake.Reading;

/// <summary>The columns a profile reads, each once, in the order it names them.</summary>
internal static class ProfileColumns
{
    public static IReadOnlyList<string> ReadBy(Profile profile)
    {
        var identity = profile.Identity;
        CellSource?[] sources =
        [
            identity.Instrument, identity.Run, identity.Barcode, identity.Operator, identity.Extract, identity.Replicate, identity.Tuber,
            identity.Slice, identity.Material,
        ];
        var rules = profile.Controls.Concat(profile.FryBatches).ToList();
        var quantities = profile.OneValueRows is { } rows ? [.. rows.Map.Values] : profile.Quantities;
        return
        [
            .. sources.Select(source => source?.Column)
                .Concat(profile.Time?.Columns ?? [])
                .Concat(profile.RowKey)
                .Concat(rules.Select(rule => (string?)rule.When.Column))
                .Concat(rules.Select(rule => rule.Material.Column))
                .Append(profile.OneValueRows?.QuantityColumn)
                .Concat(quantities.Select(rule => rule.Value.Column))
                .Concat(quantities.Select(rule => rule.UnitColumn))
                .OfType<string>()
                .Distinct(StringComparer.Ordinal),
        ];
    }
}
