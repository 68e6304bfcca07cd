namespace LabPipeline.Station.Demo;

/// <summary>The list of what was planted, for people and for tests. Rules are named as the quality service names them.</summary>
internal static class DemoTroubles
{
    private const string Disagreement = "duplicate disagreement";
    private const string IncompleteSample = "incomplete sample";

    public static IReadOnlyList<PlantedTrouble> Of(DemoPlaces places) =>
        [.. OfDuplicates(places), .. OfSamples(places), .. OfSessions(places), .. OfFiles(places)];

    private static IEnumerable<PlantedTrouble> OfDuplicates(DemoPlaces places) =>
    [
        new("glucose disagrees, high", "The second extract's glucose reads 35 % high.", places.Sample(DemoMishaps.GlucoseHigh), Disagreement, []),
        new("glucose disagrees, low", "The first extract's glucose reads 30 % low.", places.Sample(DemoMishaps.GlucoseLow), Disagreement, []),
        new("sucrose disagrees", "The second extract's sucrose comes out 30 % high, its glucose does not.", places.Sample(DemoMishaps.SucroseHigh), Disagreement, []),
        new("dilution slip", "The second extract was diluted 1+4 and entered with factor 1.", places.Diluted(DemoMishaps.DilutionSlip), "likely dilution slip", []),
    ];

    private static IEnumerable<PlantedTrouble> OfSamples(DemoPlaces places) =>
    [
        new("free and total glucose swapped", "Both extracts went into the analyser in the wrong order, so that sucrose comes out below zero.",
            places.Sample(DemoMishaps.Swapped), "negative sucrose", []),
        new("label of another trial", $"The second extract was scanned as {DemoMishaps.StrangeLabel}, a good barcode that no plan holds; the sample keeps one extract.",
            places.File(DemoMishaps.OtherLabel, "analyser-b", ".txt"), "unknown barcode", [IncompleteSample]),
        new("short of tubers", "Three tubers instead of five were fried.", places.Sample(DemoMishaps.ShortOfTubers), IncompleteSample, []),
        new("chip read over an open port", "One chip reads Hunter L 8.2.", places.Sample(DemoMishaps.OpenPort), "implausible value", []),
        new("badly peeled", "Only 75 % of the surface was clean.", places.Sample(DemoMishaps.BadlyPeeled), "peel below target", []),
    ];

    private static IEnumerable<PlantedTrouble> OfSessions(DemoPlaces places) =>
    [
        new("forgotten block", "Nobody fetched the bags of a block: it has no reading at this pull.", places.Plots(DemoMishaps.Forgotten), "incomplete pull", []),
        new("late block", "A block came to the bench four days after its day, when the window had closed.", places.Plots(DemoMishaps.Late), "late pull", []),
        new("sling not tared", "Every weight under water of a session is 12 g too high.", places.Run(DemoMishaps.UntaredSling, "W"), "weighing off", []),
        new("cold oil", $"Batch {DemoMishaps.ColdBatch} was fried before the oil had come back to 360 degF.", $"{places.Run(DemoMishaps.ColdOil, "F")}-{DemoMishaps.ColdBatch}", "fry batch out of window", []),
    ];

    private static IEnumerable<PlantedTrouble> OfFiles(DemoPlaces places) =>
    [
        new("copy under another name", "The same file came twice; its rows count once.", places.File(DemoFileTroubles.CopiedColour, "colour-1", "_copy.csv"), null, []),
        new("honest re-export", "The run was exported before its end and again when it was complete; only the new rows are added.",
            places.File(DemoFileTroubles.ColourExportedEarly, "colour-1", "_all.csv"), null, []),
        new("edited re-export", "The run came again the next day with one glucose value 10 % lower.",
            places.File(DemoFileTroubles.EditedSugars, "analyser-a", "_2.csv"), "conflicting re-export", []),
        new("mistyped barcode", "One barcode of a peel sheet fails its check character. The right file waits in corrections.",
            places.File(DemoFileTroubles.WrongBarcode, "peel-score", ".csv"), "file refused", []),
        new("decimal commas", "Peel masses came with decimal commas into a folder whose profile states points. The right file waits in corrections.",
            places.File(DemoFileTroubles.DecimalCommas, "peeling", ".tsv"), "file refused", []),
        new("half-written file", "A fry log ends in the middle of a line. The whole file waits in corrections.",
            places.File(DemoFileTroubles.HalfWritten, "fry-log", ".csv"), "file held", []),
    ];
}
