namespace LabPipeline.Station.Demo;

/// <summary>The list of what was planted, for people and for tests. Rules are named as the quality service names them.</summary>
internal static class DemoTroubles
{
    private const string Disagreement = "duplicate disagreement";
    private const string IncompleteSample = "incomplete sample";
    private const string ControlOut = "control check out";
    private const string OrderMismatch = "bench order mismatch";
    private const string Early = "measured before the pull";
    private const string Refused = "file refused";

    public static IReadOnlyList<PlantedTrouble> Of(DemoPlaces places) =>
        [.. OfDuplicates(places), .. OfSamples(places), .. OfSessions(places), .. OfControls(places), .. OfOrders(places), .. OfTimes(places), .. OfFiles(places)];

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
        new("volume entered twice", "The first extract's volume stands as made up and as solvent added.", places.Sample(DemoMishaps.TwoVolumes), "result not computable", []),
        new("badly peeled", "Only 75 % of the surface was clean.", places.Sample(DemoMishaps.BadlyPeeled), "peel below target", []),
    ];

    private static IEnumerable<PlantedTrouble> OfSessions(DemoPlaces places) =>
    [
        new("forgotten block", "Nobody fetched the bags of a block: it has no reading at this pull.", places.Plots(DemoMishaps.Forgotten), "incomplete pull", []),
        new("late block", "A block came to the bench four days after its day, when the window had closed.", places.Plots(DemoMishaps.Late), "late pull", []),
        new("sling not tared", "Every weight under water of a session is 12 g too high.", places.Run(DemoMishaps.UntaredSling, "W"), "weighing off", [ControlOut]),
        new("cold oil", $"Batch {DemoMishaps.ColdBatch} was fried before the oil had come back to 360 degF.", $"{places.Run(DemoMishaps.ColdOil, "F")}-{DemoMishaps.ColdBatch}", "fry batch out of window", []),
    ];

    private static IEnumerable<PlantedTrouble> OfControls(DemoPlaces places) =>
    [
        new("analyser drift", "The closing controls read 12 % high, the samples before them 5 %.", places.Run(DemoFlaws.Drifting, "A"), ControlOut, []),
        new("worn enzyme", "A quarter of the sucrose stays unsplit all session; free glucose holds.", places.Run(DemoFlaws.WornEnzyme, "B"), ControlOut, []),
        new("unit changed", "The analyser writes mmol/L under columns that say mg/dL.", $"{places.Run(DemoFlaws.OtherUnit, "A")}, unit", ControlOut, []),
        new("tile drift", "The closing check tile reads 0.9 Hunter L too high: a greasy port.", places.Run(DemoFlaws.DirtyPort, "C1-"), ControlOut, []),
        new("stern scorer", "One session's scores lie two points high, those of the reference chips too.", places.Run(DemoFlaws.SternScorer, "CH"), ControlOut, []),
    ];

    private static IEnumerable<PlantedTrouble> OfOrders(DemoPlaces places) =>
    [
        new("rack shifted by one", "The chips were read one place off, the last sample first.", $"{places.Run(DemoFlaws.RackShifted, "C1-")}, the rack is shifted", OrderMismatch, []),
        new("tray rotated", "The tray lay the wrong way round under the colour meter.", $"{places.Run(DemoFlaws.TrayRotated, "C1-")}, the tray is rotated", OrderMismatch, []),
        new("samples exchanged", "Two samples stood in each other's place in the analyser's rack.",
            $"{places.Run(DemoFlaws.Exchanged, "B")}, {places.Sample((DemoFlaws.Exchanged.Pull, DemoFlaws.Exchanged.Block, DemoFlaws.FirstExchanged))}", OrderMismatch, []),
    ];

    private static IEnumerable<PlantedTrouble> OfTimes(DemoPlaces places) =>
    [
        new("two pulls mixed", "A bag was weighed under its label of the next pull.", places.NextPull(DemoMishaps.NextPull), Early, []),
        new("slow clock", "The balance's clock was four days behind.", places.Plots(DemoFileTroubles.SlowClock), Early, []),
        new("date order", "Peel masses came with the day before the month.", places.Plots(DemoFileTroubles.DayFirst), Early, []),
        new("instrument silent", "The colour meter's file never reached its folder.", $"colour meter, {places.Plots(DemoFileTroubles.NeverSent)}", "instrument silent", []),
    ];

    private static IEnumerable<PlantedTrouble> OfFiles(DemoPlaces places) =>
    [
        new("copy under another name", "The same file came twice; its rows count once.", places.File(DemoFileTroubles.CopiedColour, "colour-1", "_copy.csv"), null, []),
        new("honest re-export", "The run was exported before its end and again when it was complete; only the new rows are added.",
            places.File(DemoFileTroubles.ColourExportedEarly, "colour-1", "_all.csv"), null, []),
        new("edited re-export", "The run came again the next day with one glucose value 10 % lower.",
            places.File(DemoFileTroubles.EditedSugars, "analyser-a", "_2.csv"), "conflicting re-export", []),
        new("mistyped barcode", "One barcode of a peel sheet fails its check character. The right file waits in corrections.",
            places.File(DemoFileTroubles.WrongBarcode, "peel-score", ".csv"), Refused, []),
        new("decimal commas", "Peel masses came with decimal commas into a folder whose profile states points. The right file waits in corrections.",
            places.File(DemoFileTroubles.DecimalCommas, "peeling", ".tsv"), Refused, []),
        new("no fresh mass", "One extract's mass was entered as 0. The right file waits in corrections.",
            places.File(DemoFileTroubles.NoMass, "analyser-a", ".csv"), Refused, ["instrument silent"]),
        new("spreadsheet damage", "A peel sheet was saved by a spreadsheet, which wrote the times its own way. The right file waits in corrections.",
            places.File(DemoFileTroubles.Spreadsheet, "peel-score", ".csv"), Refused, []),
        new("placeholder", "The balance wrote 9999.99 while it was overloaded. The right file waits in corrections.",
            places.File(DemoFileTroubles.Placeholder, "peeling", ".tsv"), Refused, []),
        new("half-written file", "A fry log ends in the middle of a line. The whole file waits in corrections.",
            places.File(DemoFileTroubles.HalfWritten, "fry-log", ".csv"), "file held", []),
    ];
}
