using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using LabPipeline.Science.Randomisation;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Planning;

/// <summary>A layout drawn with a stated seed: the plan document with its plots.</summary>
/// <param name="Plan">The plan, read back from the document.</param>
/// <param name="Document">The plan document; seed and plots in it.</param>
public sealed record DrawnPlan(TrialPlan Plan, string Document)
{
    private static readonly JsonWriterOptions Layout = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, NewLine = "\n" };
    private static readonly JsonSerializerOptions OneLine = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Draws the layout. Each block, and each main plot of a split-plot, has a random stream of its own (docs/specs/planning.md).</summary>
    /// <param name="outline">What to draw from.</param>
    /// <param name="seed">0 to <see cref="TrialDesign.LargestSeed"/>.</param>
    /// <exception cref="InvalidOperationException">The document made is no sound plan: a fault of this program.</exception>
    public static DrawnPlan Of(PlanOutline outline, long seed)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(seed, TrialDesign.LargestSeed);
        var (plan, design) = (outline.Plan, outline.Plan.Design);
        var numbering = new PlotNumbering(design.Blocks, [.. plan.Bays.Select(bay => bay.Code)], design.Factors, design.MainPlotFactor);
        var plots = numbering.Number((treatments, unit) => Pcg32.Named(seed, $"{plan.Code}/{unit}").Shuffle(treatments));
        var document = Write(outline.Root, seed, plots);
        var read = PlanDocument.Parse(document, plan.Code);
        return new DrawnPlan(
            read.Plan ?? throw new InvalidOperationException($"The drawn plan has faults: {string.Join(" ", read.Faults.Select(fault => fault.Describe(plan.Code)))}"),
            document);
    }

    private static string Write(JsonObject outline, long seed, IReadOnlyList<TrialPlot> plots)
    {
        var root = outline.DeepClone().AsObject();
        root["design"]!["seed"] = seed;
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, Layout))
        {
            writer.WriteStartObject();
            foreach (var (name, node) in root)
            {
                writer.WritePropertyName(name);
                JsonSerializer.Serialize(writer, node);
            }

            writer.WriteStartArray("plots");
            foreach (var plot in plots)
            {
                writer.WriteRawValue(PlotText.NodeOf(plot).ToJsonString(OneLine));
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }
}
