using LabPipeline.Science.Gravity;

namespace LabPipeline.Quality.Results;

/// <summary>Which relations a trial's choice of a dry matter relation stands for: its own, and the starch relation published beside it.</summary>
internal static class TrialRelations
{
    private static readonly Dictionary<string, IReadOnlyList<SolidsRelation>> ByName = new(StringComparer.Ordinal)
    {
        [SolidsRelation.DryMatterVonScheele1937.Name] = [SolidsRelation.DryMatterVonScheele1937, SolidsRelation.StarchVonScheele1937],
        [SolidsRelation.DryMatterWeightRatio.Name] = [SolidsRelation.DryMatterWeightRatio, SolidsRelation.StarchWeightRatio],
        [SolidsRelation.SolidsKleinkopf1987.Name] = [SolidsRelation.SolidsKleinkopf1987],
    };

    /// <summary>The names a trial may state.</summary>
    public static string Known { get; } = string.Join(", ", ByName.Keys);

    /// <returns>Empty when no relation has this name.</returns>
    public static IReadOnlyList<SolidsRelation> Find(string name) => ByName.GetValueOrDefault(name, []);
}
