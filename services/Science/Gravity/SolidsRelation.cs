using LabPipeline.Science.Units;

namespace LabPipeline.Science.Gravity;

/// <summary>A published relation between specific gravity and a content in % of fresh weight. Its <see cref="Name"/> is stored with every result made by it.</summary>
/// <remarks>
/// Relations were fitted on tubers of one region and time; between two of them lies up to 1 % dry matter. Differences between samples are
/// trustworthy, levels are not. Specific gravities from 1.040 to 1.120 are accepted, the range of the published tables.
/// </remarks>
public sealed class SolidsRelation
{
    /// <summary>Lowest specific gravity accepted.</summary>
    public const decimal LowestSpecificGravity = 1.040m;

    /// <summary>Highest specific gravity accepted.</summary>
    public const decimal HighestSpecificGravity = 1.120m;

    /// <summary>DM % = 24.182 + 211.04 (SG - 1.0988).</summary>
    public static readonly SolidsRelation DryMatterVonScheele1937 = new(
        "dry_matter_von_scheele_1937",
        Solids.DryMatter,
        sg => 24.182m + (211.04m * (sg - 1.0988m)),
        "von Scheele, von Svensson, Rasmusson 1937 (equation from memory; agrees to 0.01 with a published trade table)",
        isVerified: true);

    /// <summary>Starch % = 17.546 + 199.07 (SG - 1.0988).</summary>
    public static readonly SolidsRelation StarchVonScheele1937 = new(
        "starch_von_scheele_1937",
        Solids.Starch,
        sg => 17.546m + (199.07m * (sg - 1.0988m)),
        "von Scheele, von Svensson, Rasmusson 1937 (equation from memory)",
        isVerified: false);

    /// <summary>Starch % = 0.051738 UWW - 5.2463 with UWW the underwater weight of 5050 g in g; the official method wants water below 18 °C.</summary>
    public static readonly SolidsRelation StarchUnderwaterWeight = new(
        "starch_underwater_weight_5050",
        Solids.Starch,
        sg => (0.051738m * SpecificGravity.UnderwaterWeightGrams(sg)) - 5.2463m,
        "International Starch Institute method 13-2e; Regulation (EC) 2236/2003, article 6",
        isVerified: true);

    /// <summary>Starch % = 264 b/a - 6.</summary>
    public static readonly SolidsRelation StarchWeightRatio = new(
        "starch_weight_ratio_264",
        Solids.Starch,
        sg => (264m * (1m - (1m / sg))) - 6m,
        "published method guide for weighing in air and water",
        isVerified: true);

    /// <summary>DM % = 278 b/a.</summary>
    public static readonly SolidsRelation DryMatterWeightRatio = new(
        "dry_matter_weight_ratio_278",
        Solids.DryMatter,
        sg => 278m * (1m - (1m / sg)),
        "published method guide for weighing in air and water",
        isVerified: true);

    /// <summary>Solids % = 218.1852 SG - 214.9206. Recalled, not verified: do not report on it before the paper was read.</summary>
    public static readonly SolidsRelation SolidsKleinkopf1987 = new(
        "solids_kleinkopf_1987_unverified",
        Solids.DryMatter,
        sg => (218.1852m * sg) - 214.9206m,
        "Kleinkopf, Westermann, Willie, Kleinschmidt 1987, American Potato Journal 64:579-588 (from memory, unverified)",
        isVerified: false);

    private readonly Func<decimal, decimal> _percent;

    private SolidsRelation(string name, Solids content, Func<decimal, decimal> percent, string source, bool isVerified)
    {
        Name = name;
        Content = content;
        Source = source;
        IsVerified = isVerified;
        _percent = percent;
    }

    /// <summary>All relations.</summary>
    public static IReadOnlyList<SolidsRelation> All { get; } =
    [
        DryMatterVonScheele1937, StarchVonScheele1937, StarchUnderwaterWeight, StarchWeightRatio, DryMatterWeightRatio, SolidsKleinkopf1987,
    ];

    /// <summary>Stored name; stable for ever.</summary>
    public string Name { get; }

    /// <summary>What the relation gives.</summary>
    public Solids Content { get; }

    /// <summary>Where it comes from.</summary>
    public string Source { get; }

    /// <summary>Whether the equation was checked against a published text or table; a report shows those that were not as such.</summary>
    public bool IsVerified { get; }

    /// <summary>The relation stored as <paramref name="name"/>.</summary>
    /// <exception cref="ArgumentException">There is none; the message lists the names.</exception>
    public static SolidsRelation Named(string name) => All.FirstOrDefault(relation => string.Equals(relation.Name, name, StringComparison.Ordinal))
        ?? throw new ArgumentException($"Found the relation '{name}', expected one of {string.Join(", ", All.Select(relation => relation.Name))}.", nameof(name));

    /// <summary>Content in % of fresh weight, unrounded.</summary>
    /// <param name="specificGravity">1.040 to 1.120.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range the relations were published for.</exception>
    public decimal Percent(decimal specificGravity) =>
        _percent(Require.Between(specificGravity, LowestSpecificGravity, HighestSpecificGravity, nameof(specificGravity)));
}
