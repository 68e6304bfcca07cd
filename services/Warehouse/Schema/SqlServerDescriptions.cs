using System.Globalization;
using System.Text;
using Dapper;

namespace LabPipeline.Warehouse.Schema;

/// <summary>Writes the data dictionary into the database as extended properties, where tools look for it.</summary>
internal static class SqlServerDescriptions
{
    private const string ListWritten =
        """
        select o.name as TableName, coalesce(c.name, N'') as ColumnName, cast(e.value as nvarchar(4000)) as Meaning
        from sys.extended_properties e
        join sys.objects o on o.object_id = e.major_id
        left join sys.columns c on c.object_id = e.major_id and c.column_id = e.minor_id
        where e.class = 1 and e.name = N'MS_Description'
        """;

    /// <summary>Adds what is missing and rewrites what reads differently; one round trip a table.</summary>
    public static async Task WriteAsync(WarehouseSession session, IEnumerable<DescribedTable> tables)
    {
        var rows = await session.Connection.QueryAsync<Written>(ListWritten, transaction: session.Transaction).ConfigureAwait(false);
        var written = rows.ToDictionary(row => (row.TableName, row.ColumnName), row => row.Meaning);
        foreach (var table in tables)
        {
            var text = new StringBuilder();
            var parameters = new DynamicParameters();
            foreach (var (column, meaning) in table.Columns.Prepend(new DescribedColumn("", table.Meaning)))
            {
                var before = written.GetValueOrDefault((table.Name, column));
                if (before != meaning)
                {
                    Add(text, parameters, table.Name, column, meaning, before is null ? "sp_addextendedproperty" : "sp_updateextendedproperty");
                }
            }

            if (text.Length > 0)
            {
                await session.Connection.ExecuteAsync(new CommandDefinition(
                    text.ToString(), parameters, session.Transaction, cancellationToken: session.CancellationToken)).ConfigureAwait(false);
            }
        }
    }

    /// <remarks>The names come from our own dictionary, which a test holds against the schema; the sentence travels as a parameter.</remarks>
    private static void Add(StringBuilder text, DynamicParameters parameters, string table, string column, string meaning, string procedure)
    {
        var parameter = "@meaning" + parameters.ParameterNames.Count().ToString(CultureInfo.InvariantCulture);
        parameters.Add(parameter, meaning);
        var kind = table.StartsWith("v_", StringComparison.Ordinal) ? "VIEW" : "TABLE";
        var level2 = column.Length == 0 ? "" : $", @level2type = N'COLUMN', @level2name = N'{column}'";
        text.AppendLine(CultureInfo.InvariantCulture,
            $"exec {procedure} @name = N'MS_Description', @value = {parameter}, @level0type = N'SCHEMA', @level0name = N'dbo', @level1type = N'{kind}', @level1name = N'{table}'{level2};");
    }

    private sealed class Written
    {
        public string TableName { get; init; } = "";

        public string ColumnName { get; init; } = "";

        public string Meaning { get; init; } = "";
    }
}
