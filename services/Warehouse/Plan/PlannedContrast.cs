namespace LabPipeline.Warehouse.Plan;

/// <summary>A question about several means that the trial asks before any are measured.</summary>
/// <param name="Name">The question in words.</param>
/// <param name="Factors">Factors whose means it compares, in the order of the design.</param>
/// <param name="Coefficients">By level, or by levels joined with a colon; means not named count 0. They add to 0.</param>
public sealed record PlannedContrast(string Name, IReadOnlyList<string> Factors, IReadOnlyDictionary<string, decimal> Coefficients)
{
    /// <summary>"clone: KT-104 -1, KT-118 1": equal for equal questions.</summary>
    public string Describe() => Describe(string.Join(':', Factors), Coefficients.Select(pair => (pair.Key, pair.Value)));

    internal static string Describe(string factors, IEnumerable<(string Cell, decimal Coefficient)> coefficients) =>
        $"{factors}: {string.Join(", ", coefficients.OrderBy(pair => pair.Cell, StringComparer.Ordinal).Select(pair => FormattableString.Invariant($"{pair.Cell} {pair.Coefficient:0.############}")))}";
}
