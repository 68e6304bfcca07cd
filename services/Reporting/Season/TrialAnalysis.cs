using LabPipeline.Reporting.Season.Keeping;

namespace LabPipeline.Reporting.Season;

/// <summary>The analysis of a whole trial.</summary>
/// <param name="Model">The model its plan commands.</param>
/// <param name="Responses">Those with any value, in printing order.</param>
/// <param name="Keeping">One table a limit.</param>
/// <param name="SugarColour">Null where either was not measured.</param>
internal sealed record TrialAnalysis(
    TrialModel Model, IReadOnlyList<ResponseAnalysis> Responses, IReadOnlyList<KeepingTable> Keeping, SugarColour? SugarColour)
{
    public ResponseAnalysis? Find(Response response) => Responses.FirstOrDefault(one => one.Response == response);
}
