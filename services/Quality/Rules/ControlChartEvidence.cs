using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Controls;

namespace LabPipeline.Quality.Rules;

/// <summary>One control chart: a material's quantity on an instrument, one point a run.</summary>
public sealed record ControlChartEvidence : IEvidence
{
    public required string Instrument { get; init; }

    public required string Material { get; init; }

    public required Quantity Quantity { get; init; }

    /// <summary>Limits in force for the newest run; null when there are none.</summary>
    public required ControlLimitRow? Limits { get; init; }

    /// <summary>The opening control of each run since the limits are in force, in time order.</summary>
    public required IReadOnlyList<(string Run, ControlPoint Point)> Openings { get; init; }

    public string Scope => "chart:" + Subject;

    public string Subject => $"{Instrument}/{Material}/{Quantity.Name}";

    public string Title => $"Control {Material} on {Instrument}, {Quantity.Name}";

    public string? TrialCode => null;

    public int? PullNo => null;

    public string? Barcode => null;
}
