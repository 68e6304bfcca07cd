using LabPipeline.Reporting.Season.Data;
using LabPipeline.Reporting.Season.Keeping;

namespace LabPipeline.Reporting.Season;

/// <summary>Analyses a season: plot means in, tables out. Pure; the same data give the same numbers.</summary>
internal static class TrialAnalyser
{
    public static TrialAnalysis Analyse(SeasonData data)
    {
        var model = new TrialModel(data);
        var means = ResponseCatalogue.All.Select(response => new PlotMeans(data, response)).Where(one => one.All.Count > 0).ToList();
        ResponseAnalysis[] responses = [.. means.AsParallel().AsOrdered().Select(one => Analyse(model, one))];
        var glucose = means.Find(one => one.Response == ResponseCatalogue.Glucose);
        var colour = means.Find(one => one.Response == ResponseCatalogue.HunterL);
        return new TrialAnalysis(
            model,
            responses,
            [.. KeepingLimits.Of(data).Select(limit => Keep(limit, responses.FirstOrDefault(one => one.Response == limit.Response)))],
            glucose is null || colour is null ? null : SugarColour.Of(glucose, colour, data.Trial.CloneFactor));
    }

    /// <summary>One response alone, pull by pull; null where it was not measured.</summary>
    public static ResponseAnalysis? Analyse(SeasonData data, Response response)
    {
        var means = new PlotMeans(data, response);
        return means.All.Count == 0 ? null : Analyse(new TrialModel(data), means);
    }

    private static ResponseAnalysis Analyse(TrialModel model, PlotMeans means)
    {
        var trial = model.Data.Trial;
        var chips = trial.TubersPerSample * trial.SlicesPerTuber;
        var scale = means.Response.ScaleFor(chips);
        var maker = new PullTableMaker(model, means, scale);
        var sure = new PullTableMaker(model, new PlotMeans(model.Data, means.Response, withDoubtful: false), scale);
        return new ResponseAnalysis(
            means.Response,
            scale,
            means.Response.ScaleStatement(chips),
            [.. model.Data.Pulls.Select(pull => Beside(maker.Make(pull.PullNo), sure))],
            means.Response.Major ? SeasonTableMaker.Make(model, means, scale) : null);
    }

    private static PullTables Beside(PullTables pull, PullTableMaker sure) =>
        pull.InDoubt.Count == 0 ? pull : pull with { WithoutDoubtful = sure.Make(pull.PullNo) };

    private static KeepingTable Keep(KeepingLimit limit, ResponseAnalysis? analysis)
    {
        var why = analysis is null ? $"{limit.Response.Title} was not measured" : analysis.Season?.WhyNone;
        if (why is not null)
        {
            return new KeepingTable(limit, [], [], why);
        }

        var onScale = limit.Response.Transform(analysis!.Scale, (double)limit.Value);
        return new KeepingTable(
            limit,
            KeepingTimes.Of(analysis.Season!.Clones, onScale, limit.HighIsBad, MeansTables.Alpha),
            KeepingTimes.Of(analysis.Season.Cells, onScale, limit.HighIsBad, MeansTables.Alpha),
            null);
    }
}
