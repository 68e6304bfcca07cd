using System.Globalization;
using LabPipeline.Science.Quantities;
using LabPipeline.Science.Sugars;

namespace LabPipeline.Quality.Results;

/// <summary>Fresh mass, volume and dilution of one extract, as its readings state them.</summary>
internal sealed class ExtractPreparation
{
    private readonly Dictionary<(string Instrument, string Run, string RowKey), decimal> _dilutionOfRow = [];
    private decimal? _onlyDilution;

    private ExtractPreparation(Extraction extraction, IReadOnlyList<long> readings)
    {
        Extraction = extraction;
        FromReadings = readings;
    }

    /// <summary>Mass and volume; the dilution belongs to each reading.</summary>
    public Extraction Extraction { get; }

    public IReadOnlyList<long> FromReadings { get; }

    /// <summary>Reads the preparation of an extract; null when readings are missing, or when one is wrong, which is then on the sheet.</summary>
    public static ExtractPreparation? Read(string where, IReadOnlyList<SampleReading> readings, decimal? dryMatterPercent, ResultSheet sheet)
    {
        var mass = Only(QuantityCatalogue.ExtractFreshMass, where, readings, sheet);
        if (mass is null || Volume(where, readings, mass.Value, dryMatterPercent, sheet) is not { } volume)
        {
            return null;
        }

        var dilutions = readings.Where(reading => reading.QuantityId == QuantityCatalogue.DilutionFactor.Id).ToList();
        if (dilutions.Count == 0)
        {
            sheet.Unknown(
                QuantityCatalogue.DilutionFactor, where, "is not stated, expected one for each reading, 1 when it was not diluted",
                "Let the profile read the factor or state it as a constant; nothing is assumed.");
            return null;
        }

        if (dilutions.Find(reading => reading.Value < 1m) is { } wrong)
        {
            sheet.Unusable(
                QuantityCatalogue.DilutionFactor, where, $"is {Text(wrong.Value)} {At(wrong)}, expected (sample + diluent) / sample, 1 or more",
                "Correct the factor at the source and export the run again.");
            return null;
        }

        return new ExtractPreparation(new Extraction(volume, DilutionFactor.None, mass.Value), IdsOf(readings)).With(dilutions);
    }

    /// <summary>The dilution of a reading: that of its own row, else the only one of the extract.</summary>
    public DilutionFactor? DilutionOf(SampleReading reading)
    {
        var factor = _dilutionOfRow.TryGetValue((reading.Instrument, reading.Run, reading.RowKey), out var own) ? own : _onlyDilution;
        return factor is { } value ? DilutionFactor.Of(value) : null;
    }

    private ExtractPreparation With(List<SampleReading> dilutions)
    {
        foreach (var reading in dilutions)
        {
            _dilutionOfRow[(reading.Instrument, reading.Run, reading.RowKey)] = reading.Value;
        }

        var distinct = dilutions.Select(reading => reading.Value).Distinct().ToList();
        _onlyDilution = distinct.Count == 1 ? distinct[0] : null;
        return this;
    }

    private static decimal? Volume(
        string where, IReadOnlyList<SampleReading> readings, decimal mass, decimal? dryMatterPercent, ResultSheet sheet)
    {
        var hasMark = readings.Any(reading => reading.QuantityId == QuantityCatalogue.ExtractVolume.Id);
        var hasSolvent = readings.Any(reading => reading.QuantityId == QuantityCatalogue.SolventVolume.Id);
        if (hasMark && hasSolvent)
        {
            sheet.Unusable(
                QuantityCatalogue.ExtractVolume, where, "is there beside a volume of solvent added, expected one of them",
                "Set aside the one that does not belong to the method.");
            return null;
        }

        if (hasMark)
        {
            return Only(QuantityCatalogue.ExtractVolume, where, readings, sheet);
        }

        return hasSolvent && dryMatterPercent is { } dryMatter && Only(QuantityCatalogue.SolventVolume, where, readings, sheet) is { } solvent
            ? Science.Sugars.ExtractVolume.SolventAdded(solvent, mass, dryMatter)
            : null;
    }

    /// <summary>The one value of a quantity in the extract; several rows may repeat it but not contradict each other.</summary>
    private static decimal? Only(Quantity quantity, string where, IReadOnlyList<SampleReading> readings, ResultSheet sheet)
    {
        var found = readings.Where(reading => reading.QuantityId == quantity.Id).ToList();
        var values = found.Select(reading => reading.Value).Distinct().Order().ToList();
        if (values.Count > 1)
        {
            sheet.Unusable(
                quantity, where, $"is both {Text(values[0])} and {Text(values[^1])} {quantity.Unit}, expected one value for one extract",
                "Find the right one in the bench record and set the other aside.");
            return null;
        }

        if (values.Count == 1 && values[0] <= 0m)
        {
            sheet.Unusable(
                quantity, where, $"is {Text(values[0])} {quantity.Unit} {At(found[0])}, expected more than 0",
                "Enter what the balance or flask showed and export again; without it no sugar content exists.");
            return null;
        }

        return values.Count == 1 ? values[0] : null;
    }

    private static List<long> IdsOf(IReadOnlyList<SampleReading> readings) =>
    [
        .. readings.Where(reading => reading.QuantityId == QuantityCatalogue.ExtractFreshMass.Id
                || reading.QuantityId == QuantityCatalogue.ExtractVolume.Id
                || reading.QuantityId == QuantityCatalogue.SolventVolume.Id
                || reading.QuantityId == QuantityCatalogue.DilutionFactor.Id)
            .Select(reading => reading.ReadingId),
    ];

    private static string At(SampleReading reading) => $"({reading.FileName} line {Text(reading.Line)})";

    private static string Text(decimal value) => value.ToString("0.############", CultureInfo.InvariantCulture);
}
