using LabPipeline.Science.Quantities;

namespace LabPipeline.Reporting.Season;

/// <summary>The results a season report knows, in the order it prints them.</summary>
internal static class ResponseCatalogue
{
    public static readonly Response Glucose = new(QuantityCatalogue.Glucose, "Glucose", "mg/g fresh weight", 3, ResponseScaleKind.Log, true, true);
    public static readonly Response Sucrose = new(QuantityCatalogue.Sucrose, "Sucrose", "mg/g fresh weight", 2, ResponseScaleKind.Log, true, true);
    public static readonly Response HunterL = new(QuantityCatalogue.MeanHunterL, "Hunter L", "", 1, ResponseScaleKind.Measured, false, true);
    public static readonly Response Severe = new(QuantityCatalogue.SevereStemEnd, "Severe stem-end defect", "% of chips", 1, ResponseScaleKind.Share, true, true);
    public static readonly Response Undesirable = new(QuantityCatalogue.UndesirableChips, "Total undesirable chips", "% of chips", 1, ResponseScaleKind.Share, true, true);

    public static IReadOnlyList<Response> All { get; } =
    [
        Glucose,
        Sucrose,
        HunterL,
        new(QuantityCatalogue.MeanHunterA, "Hunter a", "", 1, ResponseScaleKind.Measured, true, false),
        new(QuantityCatalogue.MeanHunterB, "Hunter b", "", 1, ResponseScaleKind.Measured, false, false),
        new(QuantityCatalogue.MeanCielabL, "CIELAB L*", "", 1, ResponseScaleKind.Measured, false, false),
        new(QuantityCatalogue.MeanCielabA, "CIELAB a*", "", 1, ResponseScaleKind.Measured, true, false),
        new(QuantityCatalogue.MeanCielabB, "CIELAB b*", "", 1, ResponseScaleKind.Measured, false, false),
        new(QuantityCatalogue.DarkChips, "Dark chips", "% of chips", 1, ResponseScaleKind.Share, true, false),
        new(QuantityCatalogue.MeanStemEndDefect, "Stem-end defect score", "0 to 5", 2, ResponseScaleKind.Measured, true, false),
        Severe,
        Undesirable,
        new(QuantityCatalogue.SpecificGravity, "Specific gravity", "", 4, ResponseScaleKind.Measured, false, false),
        new(QuantityCatalogue.DryMatter, "Dry matter", "% fresh weight", 1, ResponseScaleKind.Measured, false, false),
        new(QuantityCatalogue.PeelLoss, "Peel loss", "%", 1, ResponseScaleKind.Measured, true, false),
        new(QuantityCatalogue.StorageShrink, "Storage shrink", "%", 1, ResponseScaleKind.Measured, true, false),
        new(QuantityCatalogue.FryYield, "Fry yield", "%", 2, ResponseScaleKind.Measured, false, true),
    ];
}
