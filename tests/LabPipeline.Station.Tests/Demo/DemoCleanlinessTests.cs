using LabPipeline.Intake.Reading;
using LabPipeline.Science.Quantities;
using LabPipeline.Station.Demo;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Station.Tests.Demo;

/// <summary>Nothing is odd in the season but what was planted, judged here without the rules that will look for it.</summary>
public sealed class DemoCleanlinessTests(DemoSeason season) : IClassFixture<DemoSeason>
{
    // Source of the factor: ISO 5725-6, r = 2.8 s_r.
    private const double LimitFactor = 2.8;

    // Source of the factor: ratio of molar masses by inversion, 342.297 / 180.156.
    private const double SucroseFromGlucose = 1.9000;

    private readonly Dictionary<string, PlannedSample> _planned = PlanSamples.Of(season.Scenario.Plan).ToDictionary(sample => sample.Barcode.Text);

    [Fact]
    public void Duplicates_OutsideTheLimit_AreThePlantedOnes()
    {
        var outside = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var (barcode, extracts) in Extracts())
        {
            if (Disagree(extracts.Select(extract => extract.Glucose), "glucose") || Disagree(extracts.Select(extract => extract.Sucrose), "sucrose"))
            {
                outside.Add(barcode);
            }
        }

        Assert.Equal(PlacesOf("duplicate disagreement", "likely dilution slip"), outside);
    }

    [Fact]
    public void DilutionSlip_StandsAtTheRatioFive()
    {
        var place = season.Scenario.Troubles.Single(trouble => trouble.Rule == "likely dilution slip").Where;
        var extracts = Extracts()[place];

        Assert.InRange(extracts[0].Glucose / extracts[1].Glucose, 4.7, 5.3);
        Assert.InRange(extracts[0].Sucrose / extracts[1].Sucrose, 4.6, 5.4);
    }

    [Fact]
    public void Sucrose_BelowZero_IsThePlantedSwap() => Assert.Equal(
        PlacesOf("negative sucrose"),
        Extracts().Where(sample => sample.Value.Any(extract => extract.Sucrose < 0)).Select(sample => sample.Key));

    [Fact]
    public void Readings_OutsideThePlausibleRange_ArePlanted() => Assert.Equal(
        PlacesOf("implausible value"),
        season.InEffect.Where(reading => reading.Subject == ReadingSubject.Sample && !reading.Quantity.IsPlausible(reading.Value))
            .Select(reading => reading.Barcode!)
            .Distinct()
            .Order(StringComparer.Ordinal));

    [Fact]
    public void Results_OfSugars_ArePlausible()
    {
        var odd = PlacesOf("negative sucrose");
        var results = Extracts().Where(sample => !odd.Contains(sample.Key) && !IsInOtherUnit(_planned[sample.Key])).ToDictionary(
            sample => sample.Key, sample => (Glucose: sample.Value.Average(extract => extract.Glucose), Sucrose: sample.Value.Average(extract => extract.Sucrose)));

        Assert.All(results.Values, result => Assert.True(QuantityCatalogue.Glucose.IsPlausible((decimal)result.Glucose), $"glucose {result.Glucose}"));
        Assert.All(results.Values, result => Assert.True(QuantityCatalogue.Sucrose.IsPlausible((decimal)result.Sucrose), $"sucrose {result.Sucrose}"));
        Assert.All(results.Values, result => Assert.True(
            QuantityCatalogue.GlucoseSucroseRatio.IsPlausible((decimal)(result.Glucose / result.Sucrose)), $"ratio {result.Glucose / result.Sucrose}"));
    }

    [Fact]
    public void FryBatches_OutsideTheWindow_AreThePlantedOne()
    {
        var outside = season.InEffect.Where(reading => reading.Subject == ReadingSubject.FryBatch && !reading.Quantity.IsPlausible(reading.Value)).ToList();

        Assert.Equal(["F260107-3-2"], outside.Select(reading => reading.Material).Distinct());
        Assert.Contains(outside, reading => reading.Quantity == QuantityCatalogue.OilStart);
    }

    [Fact]
    public void CleanedSurface_BelowTheTarget_IsThePlantedOne() => Assert.Equal(
        PlacesOf("peel below target"),
        season.InEffect.Where(reading => reading.Quantity == QuantityCatalogue.CleanedSurface && reading.Value < 90).Select(reading => reading.Barcode!));

    [Fact]
    public void Gravity_OfASession_IsShiftedOnlyWhereTheSlingWasNotTared()
    {
        var gravities = season.InEffect.Where(reading => reading.Subject == ReadingSubject.Sample)
            .Where(reading => reading.Quantity == QuantityCatalogue.WeightInAir || reading.Quantity == QuantityCatalogue.WeightInWater)
            .GroupBy(reading => (reading.Run, Barcode: reading.Barcode!))
            .Select(weights => (
                weights.Key.Run,
                Mates: Mates(weights.Key.Barcode),
                Value: SpecificGravity(
                    weights.Single(reading => reading.Quantity == QuantityCatalogue.WeightInAir).Value,
                    weights.Single(reading => reading.Quantity == QuantityCatalogue.WeightInWater).Value)))
            .ToList();

        var shifts = gravities.GroupBy(gravity => gravity.Run).ToDictionary(
            session => session.Key,
            session => session.Average(own => own.Value - gravities.Where(other => other.Mates == own.Mates && other.Run != own.Run).Average(other => other.Value)));

        Assert.InRange(shifts["W260205-4"], 0.0032, 0.0055);
        Assert.All(shifts.Where(shift => shift.Key != "W260205-4"), shift => Assert.InRange(shift.Value, -0.0025, 0.0025));
        Assert.All(gravities, gravity => Assert.True(QuantityCatalogue.SpecificGravity.IsPlausible((decimal)gravity.Value)));
    }

    [Fact]
    public void Samples_WithLessThanThePlanExpects_ArePlanted()
    {
        var counts = season.InEffect.Where(reading => reading.Barcode is not null).GroupBy(reading => (reading.Barcode, reading.Quantity.Id))
            .ToDictionary(group => group.Key, group => group.Count());
        var short_ = _planned.Values.Where(sample => season.Scenario.Plan.Expected.Any(expected =>
            expected.PullNumber == sample.Pull.Number && counts.GetValueOrDefault((sample.Barcode.Text, expected.Quantity.Id)) < expected.Readings)).ToList();

        Assert.Equal(12, short_.Count(sample => sample is { Pull.Number: 4, Plot.Block: "2" }));
        Assert.Equal(12, short_.Count(sample => sample is { Pull.Number: 3, Plot.Block: "2" }));
        Assert.Equal(12, short_.Count(sample => sample is { Pull.Number: 5, Plot.Block: "2" }));
        Assert.Equal(38, short_.Count);
        Assert.Contains(short_, sample => PlacesOf("incomplete sample").Contains(sample.Barcode.Text));
    }

    [Fact]
    public void Readings_OutsideTheWindow_ArePlanted()
    {
        var zone = TimeZoneInfo.FindSystemTimeZoneById(season.Scenario.Plan.TimeZone);
        var outside = season.InEffect.Where(reading => reading.Barcode is { } barcode && _planned.ContainsKey(barcode))
            .Select(reading => (Sample: _planned[reading.Barcode!], Day: DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(reading.MeasuredAt!.Value, zone).DateTime)))
            .Where(entry => entry.Day < entry.Sample.Pull.OpensOn || entry.Day > entry.Sample.Pull.ClosesOn)
            .Select(entry => $"pull {entry.Sample.Pull.Number}, block {entry.Sample.Plot.Block}");

        Assert.Equal(["pull 2, block 4", "pull 3, block 3", "pull 6, block 3", "pull 6, block 4"], outside.Distinct().Order(StringComparer.Ordinal));
    }

    private SortedSet<string> PlacesOf(params string[] rules) =>
        new(season.Scenario.Troubles.Where(trouble => rules.Contains(trouble.Rule)).Select(trouble => trouble.Where), StringComparer.Ordinal);

    private static bool IsInOtherUnit(PlannedSample sample) => (sample.Pull.Number, sample.Plot.Block) == DemoFlaws.OtherUnit;

    private Dictionary<string, List<(double Glucose, double Sucrose)>> Extracts() =>
        season.InEffect.Where(reading => reading.Barcode is not null && reading.Quantity.Kind == QuantityKind.Sugar && _planned.ContainsKey(reading.Barcode))
            .GroupBy(reading => reading.Barcode!)
            .ToDictionary(
                sample => sample.Key,
                sample => sample.GroupBy(reading => reading.Extract).OrderBy(extract => extract.Key, StringComparer.Ordinal).Select(ContentOf).ToList());

    private static (double Glucose, double Sucrose) ContentOf(IEnumerable<ParsedReading> extract)
    {
        var values = extract.ToDictionary(reading => reading.Quantity, reading => (double)reading.Value);
        var perGram = values[QuantityCatalogue.ExtractVolume] * values[QuantityCatalogue.DilutionFactor] / values[QuantityCatalogue.ExtractFreshMass];
        var free = values[QuantityCatalogue.GlucoseInExtract] * perGram;
        return (free, SucroseFromGlucose * ((values[QuantityCatalogue.TotalGlucoseInExtract] * perGram) - free));
    }

    private bool Disagree(IEnumerable<double> duplicates, string quantity)
    {
        var values = duplicates.ToList();
        var known = season.Scenario.Plan.Repeatability.Single(value => value.Quantity.Name == quantity);
        var sd = Math.Max((double)known.Constant, (double)known.Relative * Math.Abs(values.Average()));
        return values.Max() - values.Min() > LimitFactor * sd;
    }

    private string Mates(string barcode)
    {
        var sample = _planned[barcode];
        return $"{sample.Pull.Number} {season.Scenario.Plan.CloneOf(sample.Plot)} {season.Scenario.Plan.TreatmentOf(sample.Plot)}";
    }

    private static double SpecificGravity(decimal air, decimal water) => (double)(air / (air - water));
}
