using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Rules;

/// <summary>What failed controls look like, as a hint where to look first; never a verdict.</summary>
internal static class ControlCause
{
    // 1 mmol/L of glucose is 18.0156 mg/dL; the others are powers of ten between g/L, mg/dL and mg/L.
    private static readonly decimal[] UnitRatios = [10m, 18.0156m, 100m, 180.156m, 1000m];

    private const decimal Near = 0.1m;

    public static string Of(IReadOnlyList<ControlVerdict> verdicts)
    {
        var failed = verdicts.Where(verdict => !verdict.Passed).ToList();
        if (failed.TrueForAll(verdict => UnitRatio(verdict) is not null))
        {
            return $"They read about {NumberText.Of(UnitRatio(failed[0])!.Value)} times too much or too little: the unit was probably changed on the instrument. Set it back and export the run again.";
        }

        var quantities = failed.Select(verdict => verdict.Point.Quantity).Distinct().ToList();
        return quantities switch
        {
            [var only] when only == QuantityCatalogue.TotalGlucoseInExtract && verdicts.Any(verdict => verdict.Point.Quantity == QuantityCatalogue.GlucoseInExtract) =>
                "Free glucose holds while total glucose is off: check invertase and membrane, then run the controls again.",
            [{ Kind: QuantityKind.Colour }, ..] => "Clean the port, read white and check tile again.",
            [{ Kind: QuantityKind.Balance }, ..] => "Check tare of balance and sling with the check mass.",
            [{ Kind: QuantityKind.Bench }, ..] => "Score the reference pieces once more against the picture card, by two people.",
            _ => "Calibrate again and run a good control.",
        };
    }

    private static decimal? UnitRatio(ControlVerdict verdict)
    {
        if (verdict.Point.Value <= 0m || verdict.Limits.Centre <= 0m)
        {
            return null;
        }

        var ratio = Math.Max(verdict.Point.Value / verdict.Limits.Centre, verdict.Limits.Centre / verdict.Point.Value);
        return Array.Find(UnitRatios, known => Math.Abs((ratio / known) - 1m) <= Near) is var found && found > 0m ? found : null;
    }
}
