using System.Globalization;
using LabPipeline.Hosting;
using LabPipeline.Science.Quantities;
using LabPipeline.Station;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Plan;
using LabPipeline.Warehouse.Results;

namespace LabPipeline.Benchmarks;

/// <summary>Fills a warehouse with a measured season: every reading and result that a report looks at, and one sample in fifty missing.</summary>
internal sealed class ReportSeason(TrialPlan plan)
{
    private const int Chips = 10;
    private const int MissingOneIn = 50;

    private static readonly DateTimeOffset Now = new(2026, 6, 1, 12, 0, 0, TimeSpan.Zero);
    private static readonly Quantity[] ChipQuantities = [QuantityCatalogue.HunterL, QuantityCatalogue.HunterA, QuantityCatalogue.HunterB, QuantityCatalogue.StemEndDefect];
    private static readonly Quantity[] ExtractQuantities = [QuantityCatalogue.GlucoseInExtract, QuantityCatalogue.TotalGlucoseInExtract];

    private readonly Random _random = new(20262);
    private readonly Dictionary<string, double> _plots = [];

    public async Task WriteAsync(string folder)
    {
        using var warehouse = await StationWarehouse.CreateAsync(new LabOptions { DataFolder = folder }, CancellationToken.None);
        await warehouse.WriteAsync(session => PlanStore.LoadAsync(session, plan, Now, "benchmark"), CancellationToken.None);
        foreach (var pull in PlanSamples.Of(plan).GroupBy(sample => sample.Pull.Number))
        {
            List<PlannedSample> samples = [.. pull.Where(_ => _random.Next(MissingOneIn) > 0)];
            await warehouse.WriteAsync(session => ReadingsAsync(warehouse, session, pull.Key, samples), CancellationToken.None);
            var results = samples.SelectMany(Results).ToList();
            await warehouse.WriteAsync(session => ResultStore.ReplaceAsync(session, [.. samples.Select(sample => sample.Barcode.Text)], results), CancellationToken.None);
        }
    }

    private static async Task ReadingsAsync(LabWarehouse warehouse, WarehouseSession session, int pull, List<PlannedSample> samples)
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"pull-{pull}.csv");
        var file = await FileLedgerStore.InsertAsync(session, new SourceFile { Sha256 = name, Kind = "sugar", Name = name, ArchivedAs = name, TakenAt = Now, State = FileState.Stored });
        using var loader = warehouse.Dialect.CreateFactLoader(session);
        loader.Begin(file);
        var line = 1;
        foreach (var sample in samples)
        {
            line++;
            foreach (var (quantity, piece) in ExtractQuantities.SelectMany(quantity => Enumerable.Range(1, 2).Select(extract => (quantity, extract)))
                .Concat(ChipQuantities.SelectMany(quantity => Enumerable.Range(1, Chips).Select(chip => (quantity, chip)))))
            {
                loader.Add(new NewFact(
                    FactSubject.Sample, line, "instrument 1", name, string.Create(CultureInfo.InvariantCulture, $"{line}/{piece}"), quantity.Id, sample.Barcode.Text, null,
                    piece % 4, false, "1", "1", null, null, (piece + 1) / 2, piece % 2, null, Now, null));
            }
        }

        await loader.CompleteAsync();
    }

    /// <summary>Invented: effects of clone, rate, block and plot, a drift over the pulls that differs between clones, and noise.</summary>
    private IEnumerable<SampleResultRow> Results(PlannedSample sample)
    {
        var (clone, rate) = (IndexOf("clone", sample), IndexOf("nitrogen", sample));
        var plot = PlotEffect(sample.Plot);
        var level = plot + (0.15 * rate) + (0.05 * clone) + (0.02 * (clone % 5) * sample.Pull.Number) + (0.1 * sample.Pull.Number);
        double Near(double centre, double perLevel, double noise) => centre + (perLevel * level) + (noise * (_random.NextDouble() - 0.5));
        double Share(double mean) => 100.0 / Chips * Math.Clamp(Math.Round(Near(mean, 1, 3)), 0, Chips);
        yield return Row(sample, QuantityCatalogue.Glucose, 0.03 * Math.Exp(Near(0, 1, 0.4)));
        yield return Row(sample, QuantityCatalogue.Sucrose, Math.Exp(Near(0, 0.3, 0.4)));
        yield return Row(sample, QuantityCatalogue.MeanHunterL, Near(62, -2, 2));
        yield return Row(sample, QuantityCatalogue.MeanHunterA, Near(2, 0.5, 1));
        yield return Row(sample, QuantityCatalogue.MeanHunterB, Near(20, 0.3, 1));
        yield return Row(sample, QuantityCatalogue.DarkChips, Share(1));
        yield return Row(sample, QuantityCatalogue.MeanStemEndDefect, Math.Max(0, Near(1, 0.3, 0.5)));
        yield return Row(sample, QuantityCatalogue.SevereStemEnd, Share(1));
        yield return Row(sample, QuantityCatalogue.UndesirableChips, Share(2));
        yield return Row(sample, QuantityCatalogue.SpecificGravity, Near(1.085, -0.001, 0.004));
        yield return Row(sample, QuantityCatalogue.DryMatter, Near(21, -0.2, 0.8));
        yield return Row(sample, QuantityCatalogue.FryYield, Near(32, -0.3, 1));
    }

    private double PlotEffect(TrialPlot plot)
    {
        if (!_plots.TryGetValue(plot.Code, out var effect))
        {
            _plots[plot.Code] = effect = (0.2 * (plot.Block[0] - '0')) + (0.3 * _random.NextDouble());
        }

        return effect;
    }

    private int IndexOf(string factor, PlannedSample sample) =>
        plan.Design.Factors.Single(one => one.Name == factor).Levels.ToList().IndexOf(sample.Plot.Levels[factor]);

    private static SampleResultRow Row(PlannedSample sample, Quantity quantity, double value) => new()
    {
        Barcode = sample.Barcode.Text,
        QuantityId = quantity.Id,
        Value = (decimal)Math.Round(value, 9),
        N = quantity.Id == QuantityCatalogue.Glucose.Id || quantity.Id == QuantityCatalogue.Sucrose.Id ? 2 : Chips,
        Basis = "mean of 2",
        FromReadings = "[1]",
        ComputedAt = Now,
    };
}
