using System.Globalization;
using LabPipeline.Reporting.Exports;
using LabPipeline.Science.Randomisation;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Labels;

/// <summary>A code for every plot that stands on labels in place of its treatment, so that nobody at the bench knows what was done to it.</summary>
/// <remarks>
/// One a plot and not one a treatment: plots that look alike on labels would be seen to be alike. A letter and two digits, drawn without
/// replacement from a stream named after the trial; plots added at the end change no code that was printed. The list is for the manager alone, and
/// so is the seed.
/// </remarks>
public sealed class BlindCodes
{
    // Without I, O, Q, and without S and F, which mark the halves.
    private const string Letters = "ABCDEGHJKLMNPRTUVWXYZ";

    private readonly TrialPlan _plan;
    private readonly long _seed;
    private readonly Dictionary<string, string> _codes;

    private BlindCodes(TrialPlan plan, long seed, Dictionary<string, string> codes) => (_plan, _seed, _codes) = (plan, seed, codes);

    /// <summary>The codes of a plan under a seed, 0 or more.</summary>
    public static BlindCodes Of(TrialPlan plan, long seed)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var all = Letters.SelectMany(letter => Enumerable.Range(0, 100).Select(number => letter + number.ToString("00", CultureInfo.InvariantCulture)));
        var drawn = Pcg32.Named(seed, $"{plan.Code}/blind").Shuffle(all);
        return new BlindCodes(plan, seed, plan.Plots.Zip(drawn).ToDictionary(pair => pair.First.Code, pair => pair.Second, StringComparer.Ordinal));
    }

    public string Of(TrialPlot plot)
    {
        ArgumentNullException.ThrowIfNull(plot);
        return _codes[plot.Code];
    }

    /// <summary>The key, for the manager alone, as comma-separated text.</summary>
    public string ToCsv()
    {
        var lines = _plan.Plots.OrderBy(Of, StringComparer.Ordinal).Select(plot => string.Join(',', new[]
        {
            Of(plot), plot.Code, plot.Block, _plan.CloneOf(plot), _plan.TreatmentOf(plot), _seed.ToString(CultureInfo.InvariantCulture),
        }.Select(CsvCell.Of)));
        return string.Join('\n', lines.Prepend("blind_code,plot,block,clone,treatment,seed")) + "\n";
    }
}
