using System.Data.Common;
using LabPipeline.Warehouse.Schema;
using MiniExcelLibs;

namespace LabPipeline.Reporting.Exports;

/// <summary>Writes what a query gives as a workbook: the table on the first sheet, what its columns mean on the second.</summary>
/// <remarks>Text cells are typed as text, so nothing in them is computed and identifiers stay as they are.</remarks>
internal static class WorkbookTable
{
    /// <returns>Rows written.</returns>
    public static async Task<long> WriteAsync(DbDataReader reader, Stream stream, string sheet, string view, CancellationToken cancellationToken)
    {
        var names = Enumerable.Range(0, reader.FieldCount).Select(reader.GetName).ToList();
        var rows = new CountedRows();
        var sheets = new Dictionary<string, object>
        {
            [sheet] = rows.Of(reader, names, names.ConvertAll(ColumnKinds.Of)),
            ["data dictionary"] = names.ConvertAll(name => new Dictionary<string, object?>
            {
                ["column"] = name,
                ["holds"] = ColumnKinds.Of(name).ToString().ToLowerInvariant(),
                ["meaning"] = SchemaMeanings.MeaningOf(view, name),
            }),
        };
        await stream.SaveAsAsync(sheets, excelType: ExcelType.XLSX, cancellationToken: cancellationToken).ConfigureAwait(false);
        return rows.Count;
    }

    private sealed class CountedRows
    {
        public long Count { get; private set; }

        public IEnumerable<IDictionary<string, object?>> Of(DbDataReader reader, List<string> names, List<ColumnKind> kinds)
        {
            // The library takes its rows synchronously; the drivers read ahead, so little waits here.
            while (reader.Read())
            {
                Count++;
                yield return names.Select((name, column) => (name, cell: ColumnKinds.Convert(kinds[column], reader.GetValue(column)))).ToDictionary(pair => pair.name, pair => pair.cell);
            }

            if (Count == 0)
            {
                yield return names.ToDictionary(name => name, _ => (object?)null);
            }
        }
    }
}
