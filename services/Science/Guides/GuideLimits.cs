namespace LabPipeline.Science.Guides;

/// <summary>Default guide limits of a chipping-potato storage laboratory.</summary>
public static class GuideLimits
{
    private const string Handbook = "The Potato: Botany, Production and Uses, CABI 2014, storage chapter";
    private const string Monitoring = "chemical maturity monitoring literature";

    public static readonly GuideLimit SucroseBeforeHolding = new(
        "sucrose_before_holding", 0.7m, "mg/g FW", GuideBound.About, "Chip stock at the end of preconditioning.", Handbook, Evidence.Seen, 1);

    public static readonly GuideLimit GlucoseBeforeHolding = new(
        "glucose_before_holding", 0.035m, "mg/g FW", GuideBound.Below, "Chip stock at the end of preconditioning.", Handbook, Evidence.Seen, 2);

    public static readonly GuideLimit SucroseAtHarvest = new(
        "sucrose_at_harvest", 1.5m, "mg/g FW", GuideBound.Below, "Physiologically mature at harvest.",
        "Herrman, Love, Shafii, Dwelle 1995, J Sci Food Agric 68:51-58", Evidence.Seen, 6);

    public static readonly GuideLimit SucroseAtHarvestForLongStorage = new(
        "sucrose_at_harvest_long_storage", 1.0m, "mg/g FW", GuideBound.AtMost, "At harvest, for long storage.",
        "Sowokinos and Preston 1988, Minnesota Agricultural Experiment Station bulletin 586", Evidence.FromMemory, 32);

    public static readonly GuideLimit GlucoseWatch = new(
        "glucose_watch", 0.1m, "mg/g FW", GuideBound.AtMost, "In holding: above it watch; best chips lie below.", Monitoring, Evidence.FromMemory, 33);

    public static readonly GuideLimit GlucoseAct = new(
        "glucose_act", 0.35m, "mg/g FW", GuideBound.AtMost, "In holding: above it act.", Monitoring, Evidence.FromMemory, 33);

    public static readonly GuideLimit GlucoseOfFries = new(
        "glucose_of_fries", 1.0m, "mg/g FW", GuideBound.Below, "Fries, not chips.",
        "Olsen, Kleinkopf, Woodell, Brandt, University of Idaho, Processing quality: cultivars, vine kill and storage", Evidence.Seen, 7);

    public static readonly GuideLimit GlucoseOfSap = new(
        "glucose_of_expressed_sap", 8m, "mmol/L", GuideBound.AtMost, "Expressed sap, multiwell assay: above it crisps are unsatisfactory.",
        "Predicting potato crisp darkening: two methods for analysis of glucose (abstract)", Evidence.Seen, 8);

    public static readonly GuideLimit HunterGood = new(
        "hunter_l_good", 60m, "L", GuideBound.AtLeast, "Fresh chips; depends on illuminant, observer and presentation.", "trade practice", Evidence.FromMemory, 36);

    public static readonly GuideLimit HunterMarginal = new(
        "hunter_l_marginal", 55m, "L", GuideBound.AtLeast, "Fresh chips below it are dark; depends on illuminant, observer and presentation.", "trade practice", Evidence.FromMemory, 36);

    public static readonly GuideLimit ChartScoreGood = new(
        "chart_score_good", 2m, "score", GuideBound.AtMost, "Visual chart, 1 light to 5 dark.", "US snack trade chart", Evidence.FromMemory, 37);

    public static readonly GuideLimit TotalUndesirable = new(
        "total_undesirable", 15m, "%", GuideBound.AtMost, "Undesirable colour and defects together; contracts differ.", "trade practice", Evidence.FromMemory, 38);

    public static readonly GuideLimit PulpTemperatureAtHarvest = new(
        "pulp_temperature_stop", 18m, "deg C", GuideBound.AtMost, "Stop harvest above it.", Handbook, Evidence.Seen, 5);

    public static readonly GuideLimit RelativeHumidity = new(
        "relative_humidity", 90m, "% RH", GuideBound.AtLeast, "Storage bays.", "common practice", Evidence.CommonPractice, 35);

    public static readonly GuideLimit AcrylamideBenchmark = new(
        "acrylamide_benchmark", 750m, "ug/kg", GuideBound.AtMost, "Crisps from fresh potato sold as food in the EU.", "Commission Regulation (EU) 2017/2158", Evidence.Seen, 29);

    /// <summary>All guides.</summary>
    public static IReadOnlyList<GuideLimit> All { get; } =
    [
        SucroseBeforeHolding, GlucoseBeforeHolding, SucroseAtHarvest, SucroseAtHarvestForLongStorage, GlucoseWatch, GlucoseAct, GlucoseOfFries, GlucoseOfSap,
        HunterGood, HunterMarginal, ChartScoreGood, TotalUndesirable, PulpTemperatureAtHarvest, RelativeHumidity, AcrylamideBenchmark,
    ];
}
