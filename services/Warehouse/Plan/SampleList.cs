using System.Globalization;
using System.Text;

namespace LabPipeline.Warehouse.Plan;

/// <summary>The list from which labels and pick lists are made, as comma-separated text.</summary>
public static class SampleList
{
    private const string Header = "barcode,trial,pull,due_on,block,plot,clone,treatment,bay";

    public static string Of(TrialPlan plan)
    {
        var text = new StringBuilder(Header).Append('\n');
        foreach (var sample in PlanSamples.Of(plan))
        {
            string[] cells =
            [
                sample.Barcode.Text,
                plan.Code,
                sample.Pull.Number.ToString(CultureInfo.InvariantCulture),
                sample.Pull.DueOn.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                sample.Plot.Block,
                sample.Plot.Code,
                plan.CloneOf(sample.Plot),
                plan.TreatmentOf(sample.Plot),
                sample.Plot.BayCode,
            ];
            text.AppendJoin(',', cells.Select(Quoted)).Append('\n');
        }

        return text.ToString();
    }

    private static string Quoted(string cell) =>
        cell.AsSpan().ContainsAny(",\"\n") ? $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : cell;
}
