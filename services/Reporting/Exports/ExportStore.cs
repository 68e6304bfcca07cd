using System.Data.Common;
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
    public static Task<ExportOutcome> WriteAsync(WarehouseSession session, ExportKind kind, ExportScope scope, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(writer);
        return WriteAsync(session, kind, scope, (reader, token) => CsvTable.WriteAsync(reader, writer, token));
    }

    /// <summary>Writes a file of a typed format; a trial or pull nobody planned writes nothing.</summary>
    public static Task<ExportOutcome> WriteAsync(WarehouseSession session, ExportKind kind, ExportScope scope, ExportFormat format, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        return format switch
        {
            ExportFormat.Parquet => WriteAsync(session, kind, scope, (reader, token) => ParquetTable.WriteAsync(reader, stream, token)),
            ExportFormat.Workbook => WriteAsync(session, kind, scope, (reader, token) =>
                WorkbookTable.WriteAsync(reader, stream, SheetOf(kind), ViewOf(kind), token)),
            _ => throw new ArgumentOutOfRangeException(nameof(format), format, "Comma-separated text goes to a text writer."),
        };
    }

    private static async Task<ExportOutcome> WriteAsync(
        WarehouseSession session, ExportKind kind, ExportScope scope, Func<DbDataReader, CancellationToken, Task<long>> write)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(scope);
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
            return ExportOutcome.Written(await write(reader, session.CancellationToken).ConfigureAwait(false));
        }
    }

    private static string SheetOf(ExportKind kind) => ViewOf(kind)[2..].Replace('_', ' ');

    private static string ViewOf(ExportKind kind) => kind switch
    {
        ExportKind.PlotMeans => "v_plot_pull",
        ExportKind.SampleResults => "v_sample_result",
        _ => "v_reading",
    };

    private static SqlText StatementOf(ExportKind kind) => kind switch
    {
        ExportKind.PlotMeans => PlotMeans,
        ExportKind.SampleResults => SampleResults,
        ExportKind.Readings => Readings,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "An export is of plot means, sample results or readings."),
    };
}
