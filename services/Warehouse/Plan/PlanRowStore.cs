using LabPipeline.Warehouse.Plan.Rows;

namespace LabPipeline.Warehouse.Plan;

/// <summary>The rows of a plan, table by table.</summary>
internal sealed class PlanRowStore
{
    private static readonly SqlText FindTrial = SqlText.Load<PlanRowStore>("find-trial");
    private static readonly SqlText FindTrialByMark = SqlText.Load<PlanRowStore>("find-trial-by-mark");
    private static readonly SqlText ListLevels = SqlText.Load<PlanRowStore>("list-factor-levels");
    private static readonly SqlText ListBays = SqlText.Load<PlanRowStore>("list-bays");
    private static readonly SqlText ListPlots = SqlText.Load<PlanRowStore>("list-plots");
    private static readonly SqlText ListPulls = SqlText.Load<PlanRowStore>("list-pulls");
    private static readonly SqlText ListSamples = SqlText.Load<PlanRowStore>("list-samples");
    private static readonly SqlText ListExpected = SqlText.Load<PlanRowStore>("list-expected-measurements");
    private static readonly SqlText ListContrasts = SqlText.Load<PlanRowStore>("list-planned-contrasts");
    private static readonly SqlText InsertContrast = SqlText.Load<PlanRowStore>("insert-planned-contrast");
    private static readonly SqlText InsertTrial = SqlText.Load<PlanRowStore>("insert-trial");
    private static readonly SqlText InsertLevel = SqlText.Load<PlanRowStore>("insert-factor-level");
    private static readonly SqlText InsertBay = SqlText.Load<PlanRowStore>("insert-bay");
    private static readonly SqlText InsertPlot = SqlText.Load<PlanRowStore>("insert-plot");
    private static readonly SqlText InsertPlotLevel = SqlText.Load<PlanRowStore>("insert-plot-level");
    private static readonly SqlText InsertPull = SqlText.Load<PlanRowStore>("insert-pull");
    private static readonly SqlText InsertSample = SqlText.Load<PlanRowStore>("insert-sample");
    private static readonly SqlText InsertExpected = SqlText.Load<PlanRowStore>("insert-expected-measurement");
    private static readonly SqlText UpdateTrial = SqlText.Load<PlanRowStore>("update-trial");
    private static readonly SqlText UpdateLevel = SqlText.Load<PlanRowStore>("update-factor-level");
    private static readonly SqlText UpdateBay = SqlText.Load<PlanRowStore>("update-bay");
    private static readonly SqlText UpdatePull = SqlText.Load<PlanRowStore>("update-pull");
    private static readonly SqlText UpdateExpected = SqlText.Load<PlanRowStore>("update-expected-measurement");

    public static async Task<PlanRows?> FindAsync(WarehouseSession session, string trialCode)
    {
        var key = new { trialCode };
        var trial = await FindTrialAsync(session, trialCode).ConfigureAwait(false);
        return trial is null
            ? null
            : new PlanRows
            {
                Trial = trial,
                Levels = await session.QueryAsync<FactorLevelRow>(ListLevels, key).ConfigureAwait(false),
                Bays = await session.QueryAsync<BayRow>(ListBays, key).ConfigureAwait(false),
                Plots = await session.QueryAsync<PlotRow>(ListPlots, key).ConfigureAwait(false),
                Pulls = await session.QueryAsync<PullRow>(ListPulls, key).ConfigureAwait(false),
                Samples = await session.QueryAsync<SampleRow>(ListSamples, key).ConfigureAwait(false),
                Expected = await session.QueryAsync<ExpectedRow>(ListExpected, key).ConfigureAwait(false),
                Contrasts = await session.QueryAsync<ContrastRow>(ListContrasts, key).ConfigureAwait(false),
            };
    }

    public static Task<TrialRow?> FindTrialAsync(WarehouseSession session, string trialCode) => session.FirstOrDefaultAsync<TrialRow>(FindTrial, new { trialCode });

    /// <returns>Code of the trial that has the mark in this season, or null.</returns>
    public static Task<string?> FindByMarkAsync(WarehouseSession session, int season, string mark) =>
        session.ScalarAsync<string>(FindTrialByMark, new { season, mark });

    public static Task InsertTrialAsync(WarehouseSession session, TrialRow trial) => session.ExecuteAsync(InsertTrial, trial);

    public static Task UpdateTrialAsync(WarehouseSession session, TrialRow trial) => session.ExecuteAsync(UpdateTrial, trial);

    public static Task InsertAsync(WarehouseSession session, IEnumerable<FactorLevelRow> rows) => session.ExecuteAsync(InsertLevel, rows);

    public static Task UpdateAsync(WarehouseSession session, IEnumerable<FactorLevelRow> rows) => session.ExecuteAsync(UpdateLevel, rows);

    public static Task InsertAsync(WarehouseSession session, IEnumerable<BayRow> rows) => session.ExecuteAsync(InsertBay, rows);

    public static Task UpdateAsync(WarehouseSession session, IEnumerable<BayRow> rows) => session.ExecuteAsync(UpdateBay, rows);

    public static async Task InsertAsync(WarehouseSession session, IEnumerable<PlotRow> rows, IEnumerable<PlotLevelRow> levels)
    {
        await session.ExecuteAsync(InsertPlot, rows).ConfigureAwait(false);
        await session.ExecuteAsync(InsertPlotLevel, levels).ConfigureAwait(false);
    }

    public static Task InsertAsync(WarehouseSession session, IEnumerable<PullRow> rows) => session.ExecuteAsync(InsertPull, rows);

    public static Task UpdateAsync(WarehouseSession session, IEnumerable<PullRow> rows) => session.ExecuteAsync(UpdatePull, rows);

    public static Task InsertAsync(WarehouseSession session, IEnumerable<SampleRow> rows) => session.ExecuteAsync(InsertSample, rows);

    public static Task InsertAsync(WarehouseSession session, IEnumerable<ExpectedRow> rows) => session.ExecuteAsync(InsertExpected, rows);

    public static Task UpdateAsync(WarehouseSession session, IEnumerable<ExpectedRow> rows) => session.ExecuteAsync(UpdateExpected, rows);

    public static Task InsertAsync(WarehouseSession session, IEnumerable<ContrastRow> rows) => session.ExecuteAsync(InsertContrast, rows);
}
