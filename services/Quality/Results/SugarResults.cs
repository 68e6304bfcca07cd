using LabPipeline.Science.Quantities;
using LabPipeline.Science.Repeatability;
using LabPipeline.Science.Sugars;
using LabPipeline.Science.Units;

namespace LabPipeline.Quality.Results;

/// <summary>Glucose and sucrose of a sample: repeat readings averaged within an extract, extracts compared as the test results they are.</summary>
internal sealed class SugarResults(
    SampleReadings readings,
    TrialSettings trial,
    RepeatabilityTable repeatability,
    decimal? dryMatterPercent,
    RepeatCost furtherExtracts,
    bool moreExtracts,
    ResultSheet sheet)
{
    private static readonly int[] Concentrations =
    [
        QuantityCatalogue.GlucoseInExtract.Id, QuantityCatalogue.TotalGlucoseInExtract.Id, QuantityCatalogue.SucroseInExtract.Id,
    ];

    private readonly List<ExtractResult> _glucose = [];
    private readonly List<ExtractResult> _sucrose = [];

    public void Compute()
    {
        var extracts = readings.All.Where(reading => reading.Quantity.Kind == QuantityKind.Sugar)
            .GroupBy(reading => reading.Extract ?? "", StringComparer.Ordinal)
            .OrderBy(extract => extract.Key, StringComparer.Ordinal);
        foreach (var extract in extracts.Where(extract => extract.Any(reading => Concentrations.Contains(reading.QuantityId))))
        {
            ComputeExtract(extract.Key, [.. extract]);
        }

        var glucose = Combine(QuantityCatalogue.Glucose, _glucose);
        var sucrose = Combine(QuantityCatalogue.Sucrose, _sucrose);
        if (glucose is not null && sucrose is not null && FreshWeight.GlucoseSucroseRatio(glucose, sucrose).OrNull is { } ratio)
        {
            var sources = _glucose.Concat(_sucrose).SelectMany(extract => extract.FromReadings);
            sheet.Add(QuantityCatalogue.GlucoseSucroseRatio, ratio, 1, null, "glucose / sucrose", sources);
        }
    }

    private void ComputeExtract(string extract, IReadOnlyList<SampleReading> own)
    {
        var where = extract.Length == 0 ? "" : "extract " + extract;
        if (ExtractPreparation.Read(where, own, dryMatterPercent, sheet) is not { } preparation)
        {
            return;
        }

        var free = Content(QuantityCatalogue.GlucoseInExtract, where, own, preparation);
        var total = Content(QuantityCatalogue.TotalGlucoseInExtract, where, own, preparation);
        var direct = Content(QuantityCatalogue.SucroseInExtract, where, own, preparation);
        if (free is not null)
        {
            _glucose.Add(free with { Extract = extract });
        }

        if (total is not null && free is not null)
        {
            _sucrose.Add(new ExtractResult(
                extract, Inversion.Sucrose(total.Content, free.Content), Earlier(total.MeasuredAt, free.MeasuredAt), [.. total.FromReadings, .. free.FromReadings]));
        }
        else if (total is null && direct is not null)
        {
            _sucrose.Add(direct with { Extract = extract });
        }
    }

    /// <summary>mg/g from the repeat readings of one quantity in one extract; null when there are none or one cannot be used.</summary>
    private ExtractResult? Content(Quantity quantity, string where, IReadOnlyList<SampleReading> own, ExtractPreparation preparation)
    {
        var repeats = own.Where(reading => reading.QuantityId == quantity.Id).ToList();
        var results = new List<LabResult>(repeats.Count);
        foreach (var reading in repeats)
        {
            if (preparation.DilutionOf(reading) is not { } dilution)
            {
                sheet.Unknown(
                    QuantityCatalogue.DilutionFactor, where, $"has several values, none on the row of {reading.FileName} line {reading.Line}",
                    "Let the profile read the factor on the row of the reading.");
                return null;
            }

            if (Concentration(reading, quantity, where) is not { } concentration)
            {
                return null;
            }

            results.Add(concentration.Scale(dilution.Value));
        }

        return results.Count == 0
            ? null
            : new ExtractResult(
                where,
                preparation.Extraction.MilligramsPerGram(CensoredMean.Of(results)),
                repeats.Min(reading => reading.MeasuredAt),
                [.. repeats.Select(reading => reading.ReadingId), .. preparation.FromReadings]);
    }

    private LabResult? Concentration(SampleReading reading, Quantity quantity, string where)
    {
        try
        {
            return reading.BelowLimit ? LabResult.Below(reading.Value) : LabResult.Of(reading.Value, readings.MethodOf(reading).LimitOf(quantity));
        }
        catch (FormatException exception)
        {
            sheet.Unknown(quantity, where, exception.Message, "Correct the limit in the profile and read the file again.");
            return null;
        }
        catch (ArgumentOutOfRangeException)
        {
            sheet.Unusable(
                quantity, where, FormattableString.Invariant($"is below a limit of {reading.Value} {quantity.Unit} ({reading.FileName} line {reading.Line}), expected a limit above 0"),
                "Correct the limit at the source and export the run again.");
            return null;
        }
    }

    private LabResult? Combine(Quantity quantity, List<ExtractResult> extracts)
    {
        if (extracts.Count == 0)
        {
            return null;
        }

        var comparison = ExtractComparison.Of(quantity, extracts, repeatability.For(quantity), trial.ExtractsPerSample, furtherExtracts, moreExtracts);
        var reported = ReportedValue.Of(comparison.Content);
        var numbers = comparison.Used.Where(extract => extract.Content.Raw is not null).Select(extract => extract.Content.Raw!.Value).ToList();
        var s = numbers.Count == comparison.Used.Count ? Spread.Of(numbers) : null;
        sheet.Agreements.Add(comparison.Agreement);
        sheet.Add(
            quantity, reported.Value, comparison.Used.Count, s, comparison.Basis + reported.Remark,
            comparison.Used.SelectMany(extract => extract.FromReadings), reported.BelowLimit);
        return comparison.Content;
    }

    private static DateTimeOffset? Earlier(DateTimeOffset? left, DateTimeOffset? right) => left is null || right < left ? right : left;
}
