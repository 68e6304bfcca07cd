using System.Buffers;
using System.Data;
using System.Text.Encodings.Web;
using System.Text.Json;
using Dapper;
using Microsoft.Data.SqlClient;

namespace LabPipeline.Warehouse.Facts;

/// <summary>The facts of one file for one table: a small file goes as one parameter, a larger one by bulk copy through a staging table.</summary>
internal sealed class SqlServerFactBatch(WarehouseSession session, FactSubject subject, int fileId) : IDisposable
{
    /// <summary>So many facts are held in memory; what a file has beyond them makes it a large one.</summary>
    public const int HeldFacts = 5000;

    // Storing a large file takes as long as it takes; what must not wait for it does not wait here.
    private const int StoreTimeoutSeconds = 1800;

    // What JSON writes with a backslash goes by the staging table, which carries texts as they are.
    private static readonly SearchValues<char> Escaped = SearchValues.Create("\"\\\b\f\n\r\t");

    private static readonly JsonWriterOptions AsItIs = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly SqlServerFactText _text = SqlServerFactText.Of(subject);
    private readonly List<StagedFact> _held = new(capacity: 64);
    private DataTable? _staging;

    public void Add(in StagedFact fact)
    {
        if (_held.Count == HeldFacts)
        {
            Stage();
        }

        _held.Add(fact);
    }

    /// <summary>Stores everything added and tells what became of it, by standing.</summary>
    public async Task<IReadOnlyList<StandingCount>> StoreAsync()
    {
        if (_staging is null && !_held.Any(MustEscape))
        {
            return await StoreAsync(_text.StoreGiven, new { fileId, facts = Json() }).ConfigureAwait(false);
        }

        Stage();
        var counts = await StoreAsync(_text.StoreStaged, new { fileId }).ConfigureAwait(false);
        await session.Connection.ExecuteAsync(_text.DropStage, transaction: session.Transaction).ConfigureAwait(false);
        return counts;
    }

    public void Dispose() => _staging?.Dispose();

    private bool MustEscape(StagedFact fact) =>
        _text.StagedColumns.Any(column => column.IsText && column.Value(fact) is string text && text.AsSpan().IndexOfAny(Escaped) >= 0);

    private async Task<IReadOnlyList<StandingCount>> StoreAsync(string statement, object parameters) =>
        (await session.Connection.QueryAsync<StandingCount>(new CommandDefinition(
            statement, parameters, session.Transaction, StoreTimeoutSeconds, cancellationToken: session.CancellationToken)).ConfigureAwait(false)).AsList();

    private void Stage()
    {
        _staging ??= CreateStage();
        foreach (var fact in _held)
        {
            _staging.Rows.Add([.. _text.StagedColumns.Select(column => column.Value(fact) ?? DBNull.Value)]);
        }

        using var copy = new SqlBulkCopy((SqlConnection)session.Connection, SqlBulkCopyOptions.Default, (SqlTransaction?)session.Transaction)
        {
            DestinationTableName = _text.StageName,
            BulkCopyTimeout = StoreTimeoutSeconds,
        };
        foreach (var column in _text.StagedColumns)
        {
            copy.ColumnMappings.Add(column.Name, column.Name);
        }

        copy.WriteToServer(_staging);
        _staging.Clear();
        _held.Clear();
    }

    /// <remarks>Made without parameters: a temporary table that a parameterised statement makes ends with it.</remarks>
    private DataTable CreateStage()
    {
        session.Connection.Execute(_text.CreateStage, transaction: session.Transaction);
        var staging = new DataTable();
        staging.Columns.AddRange([.. _text.StagedColumns.Select(column => new DataColumn(column.Name, column.ClrType))]);
        return staging;
    }

    private string Json()
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, AsItIs))
        {
            writer.WriteStartArray();
            foreach (var fact in _held)
            {
                writer.WriteStartObject();
                foreach (var column in _text.StagedColumns)
                {
                    Write(writer, column.Name, column.Value(fact));
                }

                writer.WriteEndObject();
            }

            writer.WriteEndArray();
        }

        return System.Text.Encoding.UTF8.GetString(stream.GetBuffer().AsSpan(0, (int)stream.Length));
    }

    private static void Write(Utf8JsonWriter writer, string name, object? value)
    {
        switch (value)
        {
            case null:
                break;
            case string text:
                writer.WriteString(name, text);
                break;
            case bool flag:
                writer.WriteBoolean(name, flag);
                break;
            case decimal number:
                writer.WriteNumber(name, number);
                break;
            case DateTimeOffset instant:
                writer.WriteString(name, DapperTypes.InstantText(instant));
                break;
            default:
                writer.WriteNumber(name, Convert.ToInt64(value, System.Globalization.CultureInfo.InvariantCulture));
                break;
        }
    }
}
