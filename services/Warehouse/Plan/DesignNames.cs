namespace LabPipeline.Warehouse.Plan;

/// <summary>The spellings of designs in plan documents and in the warehouse.</summary>
public static class DesignNames
{
    private static readonly Dictionary<string, DesignKind> Kinds = new(StringComparer.Ordinal)
    {
        ["rcbd"] = DesignKind.Rcbd,
        ["factorial-rcbd"] = DesignKind.FactorialRcbd,
        ["split-plot"] = DesignKind.SplitPlot,
    };

    public static IReadOnlyCollection<string> All => Kinds.Keys;

    public static DesignKind? Find(string name) => Kinds.TryGetValue(name, out var kind) ? kind : null;

    public static string Of(DesignKind kind) => Kinds.Single(pair => pair.Value == kind).Key;
}
