using System.Data.Common;
using Parquet;
using Parquet.Schema;

namespace LabPipeline.Reporting.Exports;

/// <summary>Writes what a query gives as Apache Parquet, a bounded number of rows in memory.</summary>
/// <remarks>Numbers are 64-bit floating point: the warehouse keeps 15 digits. Dates and instants are timestamps; instants are UTC.</remarks>
internal static class ParquetTable
{
    private const int RowsInMemory = 20_000;

    /// <returns>Rows written.</returns>
    public static async Task<long> WriteAsync(DbDataReader reader, Stream stream, CancellationToken cancellationToken)
    {
        var names = Enumerable.Range(0, reader.FieldCount).Select(reader.GetName).ToList();
        var kinds = names.ConvertAll(ColumnKinds.Of);
        var fields = names.Zip(kinds, Field).ToArray();
        var writer = await ParquetWriter.CreateAsync(new ParquetSchema(fields), stream, cancellationToken: cancellationToken).ConfigureAwait(false);
        await using (writer.ConfigureAwait(false))
        {
            var rows = 0L;
            var columns = Empty(names.Count);
            while (await reader.ReadAsync(cancellationToken).ConfigureAwait(false))
            {
                for (var column = 0; column < columns.Length; column++)
                {
                    columns[column].Add(ColumnKinds.Convert(kinds[column], reader.GetValue(column)));
                }

                if (++rows % RowsInMemory == 0)
                {
                    await FlushAsync(writer, fields, kinds, columns, cancellationToken).ConfigureAwait(false);
                    columns = Empty(names.Count);
                }
            }

            if (columns[0].Count > 0 || rows == 0)
            {
                await FlushAsync(writer, fields, kinds, columns, cancellationToken).ConfigureAwait(false);
            }

            return rows;
        }
    }

    private static List<object?>[] Empty(int columns) => [.. Enumerable.Range(0, columns).Select(_ => new List<object?>())];

    private static DataField Field(string name, ColumnKind kind) => kind switch
    {
        ColumnKind.Text => new DataField<string>(name, true),
        ColumnKind.Whole => new DataField<long?>(name),
        ColumnKind.Number => new DataField<double?>(name),
        _ => new DateTimeDataField(name, DateTimeFormat.DateAndTime, isAdjustedToUTC: kind == ColumnKind.Instant, isNullable: true),
    };

    private static async Task FlushAsync(ParquetWriter writer, DataField[] fields, List<ColumnKind> kinds, List<object?>[] columns, CancellationToken cancellationToken)
    {
        using var group = writer.CreateRowGroup();
        for (var column = 0; column < fields.Length; column++)
        {
            var (field, cells) = (fields[column], columns[column]);
            await (kinds[column] switch
            {
                ColumnKind.Text => group.WriteAsync(field, cells.ConvertAll(cell => (string)cell!)),
                ColumnKind.Whole => group.WriteAsync<long>(field, cells.ConvertAll(cell => (long?)cell).ToArray(), cancellationToken: cancellationToken),
                ColumnKind.Number => group.WriteAsync<double>(field, cells.ConvertAll(cell => (double?)cell).ToArray(), cancellationToken: cancellationToken),
                _ => group.WriteAsync<DateTime>(field, cells.ConvertAll(cell => (DateTime?)cell).ToArray(), cancellationToken: cancellationToken),
            }).ConfigureAwait(false);
        }

    }
}
