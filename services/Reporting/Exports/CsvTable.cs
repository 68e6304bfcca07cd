using System.Data.Common;
using System.Text;

namespace LabPipeline.Reporting.Exports;

/// <summary>Writes what a query gives as comma-separated lines, holding one row at a time.</summary>
internal static class CsvTable
{
    private const char LineEnd = '\n';

    /// <returns>Rows written, the header not counted.</returns>
    public static async Task<long> WriteAsync(DbDataReader reader, TextWriter writer, CancellationToken cancellationToken)
    {
        var line = new StringBuilder();
        await WriteLineAsync(reader.FieldCount, column => reader.GetName(column)).ConfigureAwait(false);
        var rows = 0L;
        while (await reader.ReadAsync(cancellationToken).ConfigureAwait(false))
        {
            await WriteLineAsync(reader.FieldCount, column => reader.GetValue(column)).ConfigureAwait(false);
            rows++;
        }

        return rows;

        Task WriteLineAsync(int columns, Func<int, object> value)
        {
            line.Clear().AppendJoin(',', Enumerable.Range(0, columns).Select(column => CsvCell.Of(value(column)))).Append(LineEnd);
            return writer.WriteAsync(line, cancellationToken);
        }
    }
}
