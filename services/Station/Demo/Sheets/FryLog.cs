using System.Globalization;

namespace LabPipeline.Station.Demo.Sheets;

/// <summary>The fryer's log: one line a batch, two samples a batch.</summary>
internal static class FryLog
{
    private const int SamplesABatch = 2;

    /// <param name="session">The block fried.</param>
    /// <param name="coldBatch">Number of the batch that met cold oil; 0 when none did.</param>
    public static DemoText Of(BenchSession session, int coldBatch)
    {
        var text = new DemoText("\n").Line("batch,started,oil_start_f,oil_lowest_f,oil_after_f,time_s,cook");
        for (var batch = 1; batch <= session.Samples.Count / SamplesABatch; batch++)
        {
            var name = string.Create(CultureInfo.InvariantCulture, $"F{session.Day:yyMMdd}-{session.Block}-{batch}");
            var noise = DemoRandom.For(name);
            var (start, lowest, after) = batch == coldBatch ? (341.0, 318.0, 335.0) : (360.0, 340.0, 356.0);
            text.Cells(
                ',', name, DemoText.Time(session.At(11, 0).AddMinutes(7 * batch), "yyyy-MM-dd HH:mm"),
                DemoText.Number(start + (1.2 * noise.Normal()), 0), DemoText.Number(lowest + (2.5 * noise.Normal()), 0),
                DemoText.Number(after + (1.5 * noise.Normal()), 0), DemoText.Number(130 + (1.5 * noise.Normal()), 0), session.Operator(0));
        }

        return text;
    }
}
