namespace LabPipeline.Warehouse.Facts;

/// <summary>The statements that take the facts of one file into one table at once.</summary>
/// <remarks>
/// They mean what <see cref="SqliteFactLoader"/> does row by row in the order of the file: the first fact of a key nobody holds takes
/// effect; a value that is known for its key is a repeat and stored no second time; the first of every other value is kept as contested.
/// The two conditions on standing stay apart because each is that of an index.
/// </remarks>
public sealed class SqlServerFactText
{
    /// <summary>The parameter with a small file's facts, a JSON array.</summary>
    public const string FactsParameter = "@facts";

    private const string Collation = "collate Latin1_General_BIN2";

    private readonly FactTable _table;

    private SqlServerFactText(FactTable table)
    {
        _table = table;
        StagedColumns = FactColumn.StagedFor(table);
        StageName = "#new_" + table.Name;
        var definitions = StagedColumns.Select(column => $"    {column.Name} {column.StageType}");
        CreateStage = $"create table {StageName} (\n{string.Join(",\n", definitions)}\n)";
        DropStage = "drop table " + StageName;
        StoreStaged = Store($"(select {string.Join(", ", StagedColumns.Select(column => column.Name))} from {StageName})");
        var shape = StagedColumns.Select(column => $"{column.Name} {column.Type}");
        StoreGiven = Store(
            $"""
            (select {string.Join(", ", StagedColumns.Select(column => column.IsText ? $"{column.Name} {Collation} as {column.Name}" : column.Name))}
                   from openjson({FactsParameter}) with ({string.Join(", ", shape)}))
            """);
    }

    /// <summary>One for each fact table.</summary>
    public static IReadOnlyList<SqlServerFactText> All { get; } =
        [.. Enum.GetValues<FactSubject>().Select(subject => new SqlServerFactText(FactTable.Of(subject)))];

    public string StageName { get; }

    public string CreateStage { get; }

    public string DropStage { get; }

    /// <summary>Stores what lies in the staging table.</summary>
    public string StoreStaged { get; }

    /// <summary>Stores what the parameter holds.</summary>
    public string StoreGiven { get; }

    internal IReadOnlyList<FactColumn> StagedColumns { get; }

    internal static SqlServerFactText Of(FactSubject subject) => All[(int)subject];

    private string Store(string source)
    {
        var given = _table.Columns.Where(column => column is not ("file_id" or "standing")).ToList();
        var sameValue = _table.Subject == FactSubject.Sample ? ["value", "barcode"] : (string[])["value"];
        string[] key = ["run_id", "row_key", "quantity_id"];
        return $"""
            declare @before bigint = (select coalesce(max(reading_id), 0) from {_table.Name});

            insert into {_table.Name} ({string.Join(", ", given)}, file_id, standing)
            select {List("j", given)}, @fileId, j.standing
            from (select p.seq, {List("p", given)}, p.value_place,
                         case when p.place = 1 and not exists (
                             select 1 from {_table.Name} e where {Equal("e", "p", key)} and e.standing in (0, 3)) then 0 else 1 end as standing
                  from (select s.seq, {List("s", given)},
                               row_number() over (partition by {List("s", key)} order by s.seq) as place,
                               row_number() over (partition by {List("s", [.. key, .. sameValue])} order by s.seq) as value_place
                        from {source} s) p
                  where p.place = 1 or p.value_place = 1) j
            where j.standing = 0
               or (j.value_place = 1
                   and not exists (select 1 from {_table.Name} k where {Equal("k", "j", [.. key, .. sameValue])} and k.standing in (0, 3))
                   and not exists (select 1 from {_table.Name} k where {Equal("k", "j", [.. key, .. sameValue])} and k.standing = 1))
            order by j.seq;

            select cast(standing as int) as Standing, count(*) as Facts, min(reading_id) as FirstId, max(reading_id) as LastId
            from {_table.Name}
            where reading_id > @before and file_id = @fileId
            group by standing;
            """;
    }

    private static string List(string alias, IEnumerable<string> columns) => string.Join(", ", columns.Select(column => $"{alias}.{column}"));

    private static string Equal(string left, string right, IEnumerable<string> columns) =>
        string.Join(" and ", columns.Select(column => $"{left}.{column} = {right}.{column}"));
}
