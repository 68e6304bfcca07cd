using System.Text.Json.Nodes;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Planning;

/// <summary>A plot as plan documents write it.</summary>
internal static class PlotText
{
    public static JsonObject NodeOf(TrialPlot plot)
    {
        var node = new JsonObject { ["plot"] = plot.Code, ["block"] = plot.Block };
        if (plot.MainPlot is not null)
        {
            node["mainPlot"] = plot.MainPlot;
        }

        node["bay"] = plot.BayCode;
        node["levels"] = new JsonObject(plot.Levels.Select(level => KeyValuePair.Create(level.Key, (JsonNode?)level.Value)));
        return node;
    }
}
