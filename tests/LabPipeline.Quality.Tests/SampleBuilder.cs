using LabPipeline.Quality.Results;
using LabPipeline.Quality.Rules;
using LabPipeline.Science.Quantities;
using LabPipeline.Science.Repeatability;

namespace LabPipeline.Quality.Tests;

/// <summary>Builds a sample's readings by hand, row by row.</summary>
internal sealed class SampleBuilder
{
    public const string Barcode = "26K70012C";

    private readonly List<SampleReading> _readings = [];
    private readonly List<ContestedReading> _contested = [];
    private readonly Dictionary<string, string> _facts = [];
    private IReadOnlyList<RepeatabilityModel> _repeatability = [];
    private RepeatCost _furtherExtracts = RepeatCost.Expensive;
    private int _row;
    private bool _moreExtracts = true;

    public TrialSettings Trial { get; private set; } = new()
    {
        TrialCode = "NT26",
        TimeZone = "America/Chicago",
        ExtractsPerSample = 2,
        DryMatterRelation = "dry_matter_von_scheele_1937",
        DarkBelowHunterL = 55m,
        SevereFromScore = 3,
    };

    public SampleBuilder With(Func<TrialSettings, TrialSettings> change)
    {
        Trial = change(Trial);
        return this;
    }

    public SampleBuilder Fact(string name, string value)
    {
        _facts[name] = value;
        return this;
    }

    public SampleBuilder Repeatability(Quantity quantity, decimal constant, decimal relative = 0m)
    {
        _repeatability = [.. _repeatability, new RepeatabilityModel(quantity, constant, relative, false, "kept by the laboratory")];
        return this;
    }

    public SampleBuilder AddingExtracts(RepeatCost cost)
    {
        _furtherExtracts = cost;
        return this;
    }

    public SampleBuilder NoMoreExtracts()
    {
        _moreExtracts = false;
        return this;
    }

    /// <summary>One row of a file.</summary>
    public SampleBuilder Row(Func<SampleReading, SampleReading> place, params (Quantity Quantity, decimal Value)[] values)
    {
        _row++;
        foreach (var (quantity, value) in values)
        {
            Add(place(new SampleReading { RowKey = $"row {_row:000}", Line = _row + 1 }) with { QuantityId = quantity.Id, Value = value });
        }

        return this;
    }

    /// <summary>One row of a sugar run.</summary>
    public SampleBuilder Extract(
        string extract, decimal? glucose, decimal mass, decimal volume = 250m, decimal dilution = 1m, decimal? total = null, decimal? sucrose = null, int replicate = 1)
    {
        var values = new List<(Quantity, decimal)>
        {
            (QuantityCatalogue.ExtractFreshMass, mass), (QuantityCatalogue.ExtractVolume, volume), (QuantityCatalogue.DilutionFactor, dilution),
        };
        Optional(values, QuantityCatalogue.GlucoseInExtract, glucose);
        Optional(values, QuantityCatalogue.TotalGlucoseInExtract, total);
        Optional(values, QuantityCatalogue.SucroseInExtract, sucrose);
        return Row(reading => reading with { Extract = extract, Replicate = replicate }, [.. values]);
    }

    public SampleBuilder Chip(int tuber, int slice, params (Quantity Quantity, decimal Value)[] values) =>
        Row(reading => reading with { Tuber = tuber, Slice = slice }, values);

    public SampleBuilder Bag(params (Quantity Quantity, decimal Value)[] values) => Row(reading => reading, values);

    public SampleBuilder BelowLimit(string extract, Quantity quantity, decimal limit)
    {
        _row++;
        Add(new SampleReading { RowKey = $"row {_row:000}", Line = _row + 1, Extract = extract, QuantityId = quantity.Id, Value = limit, BelowLimit = true });
        return this;
    }

    public SampleBuilder Contest(ContestedReading reading)
    {
        _contested.Add(reading with { Barcode = Barcode });
        return this;
    }

    public SampleComputation Compute(Func<IReadOnlyList<SampleReading>, IEnumerable<SampleReading>>? shuffle = null) =>
        SampleResults.Compute(Readings(shuffle), Trial, new RepeatabilityTable(_repeatability), _furtherExtracts, _moreExtracts);

    public SampleResult? Result(Quantity quantity) => Compute().Results.SingleOrDefault(result => result.Quantity == quantity);

    public SampleEvidence Evidence() => new()
    {
        Sample = new SampleIdentity { Barcode = Barcode, TrialCode = Trial.TrialCode, PullNo = 3, PlotCode = "101", BayCode = "B1" },
        Trial = Trial,
        Readings = Readings(null),
        Contested = _contested,
        Computed = Compute(),
    };

    private SampleReadings Readings(Func<IReadOnlyList<SampleReading>, IEnumerable<SampleReading>>? shuffle) =>
        new(shuffle?.Invoke(_readings) ?? _readings, new Dictionary<int, MethodFacts> { [1] = new(_facts) });

    private void Add(SampleReading reading) => _readings.Add(reading with
    {
        ReadingId = _readings.Count + 1,
        Barcode = Barcode,
        Instrument = "analyser 1",
        Run = "2026-01-14",
        FileId = 1,
        FileName = "sugars.csv",
    });

    private static void Optional(List<(Quantity, decimal)> values, Quantity quantity, decimal? value)
    {
        if (value is { } number)
        {
            values.Add((quantity, number));
        }
    }
}
