using Dapper;
using LabPipeline.Warehouse;

namespace LabPipeline.Reporting.Exports;

/// <summary>Exports of a trial from the analysts' views, under the views' own column names.</summary>
public sealed class ExportStore
{
    private static readonly SqlText ListPlannedPulls = SqlText.Load<ExportStore>("list-planned-pulls");
    private static readonly SqlText PlotMeans = SqlText.Load<ExportStore>("export-plot-means");
    private static readonly SqlText SampleResults = SqlText.Load<ExportStore>("export-sample-results");
    private static readonly SqlText Readings = SqlText.Load<ExportStore>("export-readings");

    /// <summary>Writes a header and one line a row to <paramref name="writer"/>, row by row; a trial or pull nobody planned writes nothing.</summary>
    public static async Task<ExportOutcome> WriteAsync(WarehouseSession session, ExportKind kind, ExportScope scope, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(scope);
        ArgumentNullException.ThrowIfNull(writer);
        if (scope.FindMissing(await session.QueryAsync<PlannedPull>(ListPlannedPulls).ConfigureAwait(false)) is { } missing)
        {
            return missing;
        }

        var command = new CommandDefinition(
            StatementOf(kind).For(session.Dialect),
            new { trialCode = scope.TrialCode, pullNo = scope.PullNo },
            session.Transaction,
            cancellationToken: session.CancellationToken);
        var reader = await session.Connection.ExecuteReaderAsync(command).ConfigureAwait(false);
        await using (reader.ConfigureAwait(false))
        {
            return ExportOutcome.Written(await CsvTable.WriteAsync(reader, writer, session.CancellationToken).ConfigureAwait(false));
        }
    }

    private static SqlText StatementOf(ExportKind kind) => kind switch
    {
        ExportKind.PlotMeans => PlotMeans,
        ExportKind.SampleResults => SampleResults,
        ExportKind.Readings => Readings,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "An export is of plot means, sample results or readings."),
    };
}
