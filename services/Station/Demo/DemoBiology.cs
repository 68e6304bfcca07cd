using System.Globalization;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Station.Demo;

/// <summary>Draws what a sample of the invented trial is like: sugars by clone, age and nitrogen; colour by the sugar of its own tuber.</summary>
/// <remarks>
/// Shapes follow common knowledge: cold sweetening while the bay cools, sweetening of old tubers, a little more sugar with more nitrogen, paler
/// chips with less glucose on a logarithmic scale, 33 % between tubers. The numbers are invented; no source.
/// </remarks>
internal sealed class DemoBiology(TrialPlan plan)
{
    private const double DaysAMonth = 30.44;
    private const double AnalyserRange = 0.6;
    private const int DilutionAbove = 5;
    private const double DuplicatesWithin = 2.2;

    private static readonly double[] StemEndSteps = [0.4, 1.1, 1.7, 2.3, 2.9];

    /// <summary>The sample as it truly is.</summary>
    public DemoSample Draw(PlannedSample planned)
    {
        var clone = DemoClone.Find(plan.CloneOf(planned.Plot));
        var nitrogen = (int.Parse(planned.Plot.Levels["nitrogen"], CultureInfo.InvariantCulture) - 120) / 80.0;
        var months = (planned.Pull.DueOn.DayNumber - plan.HarvestedOn.DayNumber) / DaysAMonth;
        var tubers = GlucoseOfTubers(planned, clone, nitrogen, months);
        var (air, water, temperature) = Weighing(planned, clone, nitrogen);
        var (before, after, cleaned) = Peeling(planned);
        return new DemoSample(
            planned,
            Extracts(planned, tubers.Average(), Sucrose(planned, clone, nitrogen, months)),
            [.. Chips(planned, clone, tubers)],
            air,
            water,
            temperature,
            before,
            after,
            cleaned);
    }

    private double[] GlucoseOfTubers(PlannedSample planned, DemoClone clone, double nitrogen, double months)
    {
        var logarithm = Math.Log(clone.Glucose)
            + (clone.Cold * Math.Clamp((months - 1.5) / 2, 0, 1))
            + (clone.Ageing * Square(Math.Max(0, months - 5)))
            + (0.08 * nitrogen)
            + (0.06 * DemoRandom.For($"block {planned.Plot.Block} glucose").Normal())
            + (0.14 * DemoRandom.For($"plot {planned.Plot.Code} glucose").Normal())
            + (0.10 * Stream(planned, "glucose").Normal());
        var tubers = Stream(planned, "tubers");
        return [.. Enumerable.Range(0, plan.SampleSize.Tubers).Select(_ => Math.Exp(logarithm + (0.33 * tubers.Normal())))];
    }

    private static double Sucrose(PlannedSample planned, DemoClone clone, double nitrogen, double months)
    {
        var falling = 0.75 + (0.7 * Math.Exp(-Math.Max(0, months - 0.9) / 1.2));
        var ageing = clone.SucroseAgeing * Square(Math.Max(0, months - 4.5));
        var noise = (0.06 * DemoRandom.For($"plot {planned.Plot.Code} sucrose").Normal()) + (0.08 * Stream(planned, "sucrose").Normal());
        return ((clone.Sucrose * falling) + ageing) * (1 + (0.03 * nitrogen)) * Math.Exp(noise);
    }

    /// <summary>Duplicate extracts with the repeatability the plan states; pairs near its limit are drawn again.</summary>
    private List<DemoExtract> Extracts(PlannedSample planned, double glucose, double sucrose)
    {
        var stream = Stream(planned, "extracts");
        var glucoses = Duplicates(stream, glucose, "glucose");
        var sucroses = Duplicates(stream, sucrose, "sucrose");
        var dilution = (glucose + (sucrose / 1.9)) / 2 > AnalyserRange ? DilutionAbove : 1;
        return
        [
            .. glucoses.Zip(sucroses, (g, s) => (Glucose: g, Total: g + (s / 1.9)))
                .Select((pair, index) => new DemoExtract(
                    planned.Barcode.Text, index + 1, Math.Round(50 + (0.15 * stream.Normal()), 2), pair.Glucose, pair.Total, dilution, dilution)),
        ];
    }

    private double[] Duplicates(DemoRandom stream, double level, string quantity)
    {
        var known = plan.Repeatability.Single(value => value.Quantity.Name == quantity);
        var sd = Math.Max((double)known.Constant, (double)known.Relative * level);
        while (true)
        {
            var pair = new[] { level + (sd * stream.Normal()), level + (sd * stream.Normal()) };
            if (Math.Abs(pair[0] - pair[1]) <= DuplicatesWithin * sd)
            {
                return pair;
            }
        }
    }

    private IEnumerable<DemoChip> Chips(PlannedSample planned, DemoClone clone, double[] tubers)
    {
        var stream = Stream(planned, "chips");
        var plot = 0.6 * DemoRandom.For($"plot {planned.Plot.Code} colour").Normal();
        for (var tuber = 1; tuber <= tubers.Length; tuber++)
        {
            var glucose = tubers[tuber - 1];
            var hollow = stream.Chance(clone.HollowHeart);
            var green = stream.Chance(0.02);
            for (var slice = 1; slice <= plan.SampleSize.SlicesPerTuber; slice++)
            {
                var lightness = 50.8 - (9.5 * Math.Log10(glucose)) + plot + (1.1 * stream.Normal());
                var darkening = 62 - lightness;
                var latent = clone.StemEnd + (0.3 * Math.Log(glucose / 0.06)) + stream.Normal();
                yield return new DemoChip(
                    tuber,
                    slice,
                    lightness,
                    1.0 + (0.42 * darkening) + (0.4 * stream.Normal()),
                    21.5 - (0.28 * darkening) + (0.5 * stream.Normal()),
                    StemEndSteps.Count(step => latent > step),
                    green,
                    hollow);
            }
        }
    }

    private static (double Air, double Water, double Temperature) Weighing(PlannedSample planned, DemoClone clone, double nitrogen)
    {
        var stream = Stream(planned, "weighing");
        var gravity = clone.SpecificGravity
            - (0.0009 * nitrogen)
            + (0.0004 * DemoRandom.For($"block {planned.Plot.Block} gravity").Normal())
            + (0.0009 * DemoRandom.For($"plot {planned.Plot.Code} gravity").Normal())
            + (0.0005 * stream.Normal());
        var air = 3400 + (110 * stream.Normal());
        return (air, air * (1 - (1 / gravity)), 54 + (0.8 * stream.Normal()));
    }

    private static (double Before, double After, int Cleaned) Peeling(PlannedSample planned)
    {
        var stream = Stream(planned, "peeling");
        var before = 1010 + (50 * stream.Normal());
        return (before, before * (1 - ((8 + (1.2 * stream.Normal())) / 100)), 90 + (5 * stream.Below(3)));
    }

    private static DemoRandom Stream(PlannedSample planned, string what) => DemoRandom.For($"{planned.Barcode.Text} {what}");

    private static double Square(double value) => value * value;
}
