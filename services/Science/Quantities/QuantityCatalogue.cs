namespace LabPipeline.Science.Quantities;

/// <summary>Every quantity the laboratory records or computes. Identifiers are stored in warehouses: add, never renumber.</summary>
/// <remarks>Ranges are the warning ranges of common practice in chipping-potato laboratories (no source); a trial may state its own.</remarks>
public static class QuantityCatalogue
{
    public static readonly Quantity GlucoseInExtract = new(1, "glucose_in_extract", Unit.GramPerLitre, QuantityKind.Sugar, 0m, 2m,
        "Free glucose in the extract as analysed, before dilution is taken into account.");

    public static readonly Quantity TotalGlucoseInExtract = new(2, "total_glucose_in_extract", Unit.GramPerLitre, QuantityKind.Sugar, 0m, 6m,
        "Glucose in the extract after sucrose was split by invertase.");

    public static readonly Quantity SucroseInExtract = new(3, "sucrose_in_extract", Unit.GramPerLitre, QuantityKind.Sugar, 0m, 5m,
        "Sucrose in the extract where the analyser reports it directly.");

    public static readonly Quantity ExtractFreshMass = new(4, "extract_fresh_mass", Unit.Gram, QuantityKind.Sugar, 10m, 250m,
        "Fresh mass of tuber tissue that went into the extract.");

    public static readonly Quantity ExtractVolume = new(5, "extract_volume", Unit.Millilitre, QuantityKind.Sugar, 50m, 1000m,
        "Volume the extract was made up to.");

    public static readonly Quantity SolventVolume = new(6, "solvent_volume", Unit.Millilitre, QuantityKind.Sugar, 50m, 1000m,
        "Volume of solvent added to the tissue, when it was not made up to a mark.");

    public static readonly Quantity DilutionFactor = new(7, "dilution_factor", Unit.One, QuantityKind.Sugar, 1m, 20m,
        "(sample + diluent) / sample; 1 + 4 is 5.");

    public static readonly Quantity WeightInAir = new(10, "weight_in_air", Unit.Gram, QuantityKind.Balance, 50m, 10000m,
        "Weight of the washed, dried sample in air.");

    public static readonly Quantity WeightInWater = new(11, "weight_in_water", Unit.Gram, QuantityKind.Balance, 2m, 1000m,
        "Weight of the same sample under water, sling tared.");

    public static readonly Quantity WaterTemperature = new(12, "water_temperature", Unit.Celsius, QuantityKind.Balance, 1m, 35m,
        "Temperature of the weighing water.");

    public static readonly Quantity MassBeforePeel = new(13, "mass_before_peel", Unit.Gram, QuantityKind.Balance, 50m, 50000m,
        "Mass before peeling.");

    public static readonly Quantity MassAfterPeel = new(14, "mass_after_peel", Unit.Gram, QuantityKind.Balance, 50m, 50000m,
        "Mass after peeling.");

    public static readonly Quantity MassAtLoading = new(15, "mass_at_loading", Unit.Gram, QuantityKind.Balance, 50m, 100000m,
        "Mass of the bag when it was put into storage.");

    public static readonly Quantity MassAtPull = new(16, "mass_at_pull", Unit.Gram, QuantityKind.Balance, 50m, 100000m,
        "Mass of the bag when it was taken out of storage.");

    public static readonly Quantity SliceMass = new(17, "slice_mass", Unit.Gram, QuantityKind.Balance, 1m, 5000m,
        "Mass of the raw slices before frying.");

    public static readonly Quantity ChipMass = new(18, "chip_mass", Unit.Gram, QuantityKind.Balance, 1m, 5000m,
        "Mass of the chips after frying and draining.");

    public static readonly Quantity HunterL = new(20, "hunter_l", Unit.One, QuantityKind.Colour, 25m, 75m,
        "Hunter L of a chip; illuminant and observer are those of the method.");

    public static readonly Quantity HunterA = new(21, "hunter_a", Unit.One, QuantityKind.Colour, -5m, 18m,
        "Hunter a of a chip.");

    public static readonly Quantity HunterB = new(22, "hunter_b", Unit.One, QuantityKind.Colour, 5m, 32m,
        "Hunter b of a chip.");

    public static readonly Quantity CielabL = new(23, "cielab_l", Unit.One, QuantityKind.Colour, 30m, 82m,
        "CIELAB L* of a chip (ISO/CIE 11664-4); illuminant and observer are those of the method.");

    public static readonly Quantity CielabA = new(24, "cielab_a", Unit.One, QuantityKind.Colour, -5m, 22m,
        "CIELAB a* of a chip.");

    public static readonly Quantity CielabB = new(25, "cielab_b", Unit.One, QuantityKind.Colour, 10m, 50m,
        "CIELAB b* of a chip.");

    public static readonly Quantity CleanedSurface = new(30, "cleaned_surface", Unit.Percent, QuantityKind.Bench, 0m, 100m,
        "Share of the surface free of peel, judged against the picture card.");

    public static readonly Quantity StemEndDefect = new(31, "stem_end_defect", Unit.One, QuantityKind.Bench, 0m, 5m,
        "Stem-end defect of a chip, 0 none to 5 severe.");

    public static readonly Quantity Greening = new(32, "greening", Unit.One, QuantityKind.Bench, 0m, 1m,
        "Chip shows greening: 1 yes, 0 no.");

    public static readonly Quantity HollowHeart = new(33, "hollow_heart", Unit.One, QuantityKind.Bench, 0m, 1m,
        "Chip shows hollow heart: 1 yes, 0 no.");

    public static readonly Quantity Bruise = new(34, "bruise", Unit.One, QuantityKind.Bench, 0m, 1m,
        "Chip shows a bruise: 1 yes, 0 no.");

    public static readonly Quantity InternalBrowning = new(35, "internal_browning", Unit.One, QuantityKind.Bench, 0m, 1m,
        "Chip shows internal browning: 1 yes, 0 no.");

    public static readonly Quantity Blister = new(36, "blister", Unit.One, QuantityKind.Bench, 0m, 1m,
        "Chip shows a blister: 1 yes, 0 no.");

    public static readonly Quantity ChartScore = new(38, "chart_score", Unit.One, QuantityKind.Bench, 1m, 5m,
        "Visual colour against the lab's chart, 1 light to 5 dark.");

    public static readonly Quantity OilStart = new(40, "oil_start", Unit.Celsius, QuantityKind.Bench, 175m, 190m,
        "Oil temperature when the basket went in.");

    public static readonly Quantity OilLowest = new(41, "oil_lowest", Unit.Celsius, QuantityKind.Bench, 165m, 190m,
        "Lowest oil temperature during the fry.");

    public static readonly Quantity OilAfter = new(42, "oil_after", Unit.Celsius, QuantityKind.Bench, 165m, 195m,
        "Oil temperature when the basket came out.");

    public static readonly Quantity FryTime = new(43, "fry_time", Unit.Second, QuantityKind.Bench, 120m, 140m,
        "Time the slices were in the oil.");

    public static readonly Quantity Glucose = new(60, "glucose", Unit.MilligramPerGram, QuantityKind.Result, 0.01m, 5m,
        "Glucose per gram of fresh weight.");

    public static readonly Quantity Sucrose = new(61, "sucrose", Unit.MilligramPerGram, QuantityKind.Result, 0.2m, 8m,
        "Sucrose per gram of fresh weight; may be slightly negative by difference.");

    public static readonly Quantity GlucoseSucroseRatio = new(62, "glucose_sucrose_ratio", Unit.One, QuantityKind.Result, 0.01m, 2m,
        "Glucose divided by sucrose.");

    public static readonly Quantity SpecificGravity = new(63, "specific_gravity", Unit.One, QuantityKind.Result, 1.050m, 1.110m,
        "Weight in air / (weight in air - weight in water).");

    public static readonly Quantity DryMatter = new(64, "dry_matter", Unit.Percent, QuantityKind.Result, 13m, 27m,
        "Dry matter from specific gravity by the relation the trial names.");

    public static readonly Quantity PeelLoss = new(65, "peel_loss", Unit.Percent, QuantityKind.Result, 3m, 20m,
        "(before - after) / before peeling.");

    public static readonly Quantity MeanHunterL = new(66, "mean_hunter_l", Unit.One, QuantityKind.Result, 25m, 75m,
        "Mean Hunter L of the sample's chips.");

    public static readonly Quantity MeanHunterA = new(67, "mean_hunter_a", Unit.One, QuantityKind.Result, -5m, 18m,
        "Mean Hunter a of the sample's chips.");

    public static readonly Quantity MeanHunterB = new(68, "mean_hunter_b", Unit.One, QuantityKind.Result, 5m, 32m,
        "Mean Hunter b of the sample's chips.");

    public static readonly Quantity MeanCielabL = new(69, "mean_cielab_l", Unit.One, QuantityKind.Result, 30m, 82m,
        "Mean CIELAB L* of the sample's chips.");

    public static readonly Quantity MeanCielabA = new(70, "mean_cielab_a", Unit.One, QuantityKind.Result, -5m, 22m,
        "Mean CIELAB a* of the sample's chips.");

    public static readonly Quantity MeanCielabB = new(71, "mean_cielab_b", Unit.One, QuantityKind.Result, 10m, 50m,
        "Mean CIELAB b* of the sample's chips.");

    public static readonly Quantity DarkChips = new(72, "dark_chips", Unit.Percent, QuantityKind.Result, 0m, 100m,
        "Share of chips with Hunter L below the trial's dark limit.");

    public static readonly Quantity MeanStemEndDefect = new(73, "mean_stem_end_defect", Unit.One, QuantityKind.Result, 0m, 5m,
        "Mean stem-end defect score of the sample's chips.");

    public static readonly Quantity SevereStemEnd = new(74, "severe_stem_end", Unit.Percent, QuantityKind.Result, 0m, 100m,
        "Share of chips with a stem-end score at or above the trial's severe score.");

    public static readonly Quantity UndesirableChips = new(75, "undesirable_chips", Unit.Percent, QuantityKind.Result, 0m, 100m,
        "Share of chips with at least one defect; a chip with several counts once.");

    public static readonly Quantity MeanCleanedSurface = new(76, "mean_cleaned_surface", Unit.Percent, QuantityKind.Result, 80m, 100m,
        "Mean share of peeled surface judged clean.");

    public static readonly Quantity StorageShrink = new(77, "storage_shrink", Unit.Percent, QuantityKind.Result, 0m, 15m,
        "Weight lost between loading and pull.");

    public static readonly Quantity FryYield = new(78, "fry_yield", Unit.Percent, QuantityKind.Result, 20m, 50m,
        "Chip mass / slice mass.");

    public static readonly Quantity Starch = new(79, "starch", Unit.Percent, QuantityKind.Result, 7m, 21m,
        "Starch from specific gravity by the relation the trial names.");

    /// <summary>All quantities, by identifier.</summary>
    public static IReadOnlyList<Quantity> All { get; } =
    [
        GlucoseInExtract, TotalGlucoseInExtract, SucroseInExtract, ExtractFreshMass,
        ExtractVolume, SolventVolume, DilutionFactor, WeightInAir,
        WeightInWater, WaterTemperature, MassBeforePeel, MassAfterPeel,
        MassAtLoading, MassAtPull, SliceMass, ChipMass,
        HunterL, HunterA, HunterB, CielabL,
        CielabA, CielabB, CleanedSurface, StemEndDefect,
        Greening, HollowHeart, Bruise, InternalBrowning,
        Blister, ChartScore, OilStart, OilLowest,
        OilAfter, FryTime, Glucose, Sucrose,
        GlucoseSucroseRatio, SpecificGravity, DryMatter, PeelLoss,
        MeanHunterL, MeanHunterA, MeanHunterB, MeanCielabL,
        MeanCielabA, MeanCielabB, DarkChips, MeanStemEndDefect,
        SevereStemEnd, UndesirableChips, MeanCleanedSurface, StorageShrink,
        FryYield, Starch,
    ];

    private static readonly Dictionary<string, Quantity> ByName = All.ToDictionary(quantity => quantity.Name, StringComparer.Ordinal);

    private static readonly Dictionary<int, Quantity> ById = All.ToDictionary(quantity => quantity.Id);

    /// <summary>The quantity called <paramref name="name"/>, or null.</summary>
    public static Quantity? Find(string name) => ByName.GetValueOrDefault(name);

    /// <summary>The quantity stored as <paramref name="id"/>.</summary>
    /// <exception cref="KeyNotFoundException">No quantity has this identifier: the warehouse was written by a newer version.</exception>
    public static Quantity Get(int id) => ById.TryGetValue(id, out var quantity)
        ? quantity
        : throw new KeyNotFoundException($"No quantity has identifier {id}; this warehouse was written by a newer version.");
}
