using System.Globalization;

namespace LabPipeline.Station.Demo.Sheets;

/// <summary>The hydrostatic balance: blocks of key=value, pounds, water in degF, Latin-1.</summary>
internal static class WeighingSheet
{
    private const double GramsAPound = 453.59237;
    private const double CheckMass = 1000;

    /// <summary>Weight of the brass check mass under water, density 8.4 g/mL.</summary>
    private const double CheckMassInWater = CheckMass * (1 - (1 / 8.4));

    /// <param name="session">The block weighed.</param>
    /// <param name="sling">Grams of a sling that nobody tared; 0 when all is well.</param>
    public static DemoText Of(BenchSession session, double sling)
    {
        var run = string.Create(CultureInfo.InvariantCulture, $"W{session.Day:yyMMdd}-{session.Block}");
        var noise = DemoRandom.For(run + " check");
        var text = new DemoText("\r\n").Line("hydrostatic balance, weights of one session");
        var time = session.At(8, 30);
        Block(text, "CHECK-MASS", run, time, CheckMass + (0.1 * noise.Normal()), CheckMassInWater + (0.2 * noise.Normal()) + sling, 54, session);
        foreach (var sample in session.Samples)
        {
            time = time.AddMinutes(3);
            Block(text, sample.Barcode, run, time, sample.WeightInAir, sample.WeightInWater + sling, sample.WaterTemperature, session);
        }

        Block(text, "CHECK-MASS", run, time.AddMinutes(3), CheckMass + (0.1 * noise.Normal()), CheckMassInWater + (0.2 * noise.Normal()) + sling, 54, session);
        return text;
    }

    private static void Block(DemoText text, string id, string run, DateTime time, double air, double water, double bath, BenchSession session) => text
        .Line("id=" + id)
        .Line("session=" + run)
        .Line("time=" + DemoText.Time(time, "yyyy-MM-dd HH:mm"))
        .Line($"air={DemoText.Number(air / GramsAPound, 4)} lb")
        .Line($"water={DemoText.Number(water / GramsAPound, 4)} lb")
        .Line($"bath={DemoText.Number(bath, 1)} °F")
        .Line("by=" + session.Operator(2))
        .Line("");
}
