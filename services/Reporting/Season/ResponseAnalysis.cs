using LabPipeline.Science.Statistics.Designs;

namespace LabPipeline.Reporting.Season;

/// <summary>All that is said about one response.</summary>
/// <param name="Response">Which one.</param>
/// <param name="Scale">Scale of analysis.</param>
/// <param name="ScaleStatement">The same in words.</param>
/// <param name="Pulls">One entry for each pull planned.</param>
/// <param name="Season">The model over all pulls; null for a response that is reported pull by pull only.</param>
internal sealed record ResponseAnalysis(Response Response, ResponseScale Scale, string ScaleStatement, IReadOnlyList<PullTables> Pulls, SeasonTables? Season)
{
    /// <summary>A point of a trajectory in the unit of the response.</summary>
    public double Back(double onScale) => Response.Kind switch
    {
        ResponseScaleKind.Log => Math.Exp(onScale),
        ResponseScaleKind.Share => Response.Divisor * Scale.Back(new Science.Statistics.LinearModels.AdjustedMean([], 0, onScale, null, null)),
        _ => onScale,
    };
}
