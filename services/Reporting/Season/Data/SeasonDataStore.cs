using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Controls;
using LabPipeline.Warehouse.Plan;
using LabPipeline.Warehouse.Results;

namespace LabPipeline.Reporting.Season.Data;

/// <summary>Reads a season as it stands.</summary>
internal sealed class SeasonDataStore
{
    private static readonly SqlText FindFreeze = SqlText.Load<SeasonDataStore>("find-season-freeze");
    private static readonly SqlText ListLevels = SqlText.Load<SeasonDataStore>("list-season-levels");
    private static readonly SqlText ListBays = SqlText.Load<SeasonDataStore>("list-season-bays");
    private static readonly SqlText ListPlots = SqlText.Load<SeasonDataStore>("list-season-plots");
    private static readonly SqlText ListPlotLevels = SqlText.Load<SeasonDataStore>("list-season-plot-levels");
    private static readonly SqlText ListPulls = SqlText.Load<SeasonDataStore>("list-season-pulls");
    private static readonly SqlText ListSamples = SqlText.Load<SeasonDataStore>("list-season-samples");
    private static readonly SqlText ListResults = SqlText.Load<SeasonDataStore>("list-season-results");
    private static readonly SqlText ListExpected = SqlText.Load<SeasonDataStore>("list-season-expected");
    private static readonly SqlText ListFiles = SqlText.Load<SeasonDataStore>("list-season-files");
    private static readonly SqlText ListSources = SqlText.Load<SeasonDataStore>("list-season-sources");
    private static readonly SqlText ListControls = SqlText.Load<SeasonDataStore>("list-season-controls");
    private static readonly SqlText ListNotInEffect = SqlText.Load<SeasonDataStore>("list-season-not-in-effect");
    private static readonly SqlText ListAlerts = SqlText.Load<SeasonDataStore>("list-season-alerts");
    private static readonly SqlText ListChanges = SqlText.Load<SeasonDataStore>("list-season-changes");
    private static readonly SqlText ListScores = SqlText.Load<SeasonDataStore>("list-season-scores");
    private static readonly SqlText ListThresholds = SqlText.Load<SeasonDataStore>("list-season-thresholds");
    private static readonly SqlText ListContrasts = SqlText.Load<SeasonDataStore>("list-season-contrasts");
    private static readonly SqlText ListRepeatability = SqlText.Load<SeasonDataStore>("list-season-repeatability");

    /// <returns>The season, or null where no plan of the trial is loaded.</returns>
    public static async Task<SeasonData?> FindAsync(WarehouseSession session, string trialCode, DateTimeOffset now)
    {
        var key = new { trialCode };
        if (await PlanStore.FindTrialAsync(session, trialCode).ConfigureAwait(false) is not { } trial)
        {
            return null;
        }

        var freeze = await session.FirstOrDefaultAsync<FrozenAt>(FindFreeze).ConfigureAwait(false);
        var alerts = await session.QueryAsync<AlertFact>(ListAlerts, key).ConfigureAwait(false);
        var files = await session.QueryAsync<FileFact>(ListFiles, key).ConfigureAwait(false);
        return new SeasonData
        {
            Freeze = freeze! with { At = now },
            Trial = trial,
            Levels = await session.QueryAsync<LevelFact>(ListLevels, key).ConfigureAwait(false),
            Bays = await session.QueryAsync<BayFact>(ListBays, key).ConfigureAwait(false),
            Plots = await PlotsAsync(session, key).ConfigureAwait(false),
            Pulls = await session.QueryAsync<PullFact>(ListPulls, key).ConfigureAwait(false),
            Samples = await session.QueryAsync<SampleFact>(ListSamples, key).ConfigureAwait(false),
            Results = await session.QueryAsync<ResultFact>(ListResults, key).ConfigureAwait(false),
            Expected = await session.QueryAsync<ExpectedFact>(ListExpected, key).ConfigureAwait(false),
            Files = files,
            Sources = await session.QueryAsync<SourceFact>(ListSources, key).ConfigureAwait(false),
            Controls = await session.QueryAsync<ControlFact>(ListControls, key).ConfigureAwait(false),
            NotInEffect = await session.QueryAsync<AsideFact>(ListNotInEffect, key).ConfigureAwait(false),
            Alerts = alerts,
            Changes = await ChangesAsync(session, trialCode, alerts, files).ConfigureAwait(false),
            Scores = await session.QueryAsync<ScoreFact>(ListScores, new { trialCode, scoreId = QuantityCatalogue.StemEndDefect.Id }).ConfigureAwait(false),
            Thresholds = await session.QueryAsync<ThresholdFact>(ListThresholds, key).ConfigureAwait(false),
            Repeatability = await session.QueryAsync<RepeatabilityFact>(ListRepeatability).ConfigureAwait(false),
            Contrasts = await session.QueryAsync<ContrastFact>(ListContrasts, key).ConfigureAwait(false),
            ControlLimits = await ControlLimitStore.ListAsync(session).ConfigureAwait(false),
            Grid = await SeasonGridStore.ListAsync(session, trialCode).ConfigureAwait(false),
        };
    }

    private static async Task<IReadOnlyList<PlotFact>> PlotsAsync(WarehouseSession session, object key)
    {
        var levels = (await session.QueryAsync<PlotLevelFact>(ListPlotLevels, key).ConfigureAwait(false)).ToLookup(level => level.PlotCode);
        var plots = await session.QueryAsync<PlotFact>(ListPlots, key).ConfigureAwait(false);
        return [.. plots.Select(plot => plot with { Levels = levels[plot.PlotCode].ToDictionary(level => level.Factor, level => level.Level) })];
    }

    /// <summary>What people did to the trial's plan, to its files and to its alerts.</summary>
    private static async Task<IReadOnlyList<ChangeFact>> ChangesAsync(
        WarehouseSession session, string trialCode, IReadOnlyList<AlertFact> alerts, IReadOnlyList<FileFact> files)
    {
        var trial = "trial:" + trialCode;
        var subjects = alerts.Select(alert => FormattableString.Invariant($"alert:{alert.AlertId}"))
            .Concat(files.Select(file => "file:" + file.Sha256))
            .Append(trial)
            .ToHashSet(StringComparer.Ordinal);
        var changes = await session.QueryAsync<ChangeFact>(ListChanges, new { trialSubject = trial }).ConfigureAwait(false);
        return [.. changes.Where(change => subjects.Contains(change.Subject))];
    }
}
