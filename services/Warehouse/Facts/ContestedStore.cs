using System.Globalization;

namespace LabPipeline.Warehouse.Facts;

/// <summary>The contested values of a file, looked at and accepted one by one.</summary>
public sealed class ContestedStore
{
    private const int AtOnce = 500;

    private static readonly SqlText List = SqlText.Load<ContestedStore>("list-contested-of-file");

    private static readonly IReadOnlyList<SqlText> Readings =
        [SqlText.Load<ContestedStore>("supersede-by-chosen-readings"), SqlText.Load<ContestedStore>("accept-chosen-readings")];

    private static readonly IReadOnlyList<SqlText> Controls =
        [SqlText.Load<ContestedStore>("supersede-by-chosen-control-checks"), SqlText.Load<ContestedStore>("accept-chosen-control-checks")];

    private static readonly IReadOnlyList<SqlText> FryBatches =
        [SqlText.Load<ContestedStore>("supersede-by-chosen-fry-batches"), SqlText.Load<ContestedStore>("accept-chosen-fry-batches")];

    public static Task<IReadOnlyList<ContestedValue>> ListAsync(WarehouseSession session, SourceFile file) =>
        session.QueryAsync<ContestedValue>(List, new { fileId = file.FileId, first = file.FirstReadingId ?? 0, last = file.LastReadingId ?? -1 });

    /// <summary>Lets the values of these keys take effect; those they contradict are superseded.</summary>
    /// <returns>How many took effect.</returns>
    public static async Task<int> LetInAsync(WarehouseSession session, SourceFile file, IEnumerable<string> keys)
    {
        var count = 0;
        foreach (var kind in keys.Select(key => key.Split(':')).Where(parts => parts.Length == 2).GroupBy(parts => parts[0]))
        {
            var statements = kind.Key switch
            {
                "reading" => Readings,
                "control" => Controls,
                "fry" => FryBatches,
                _ => [],
            };
            var chosen = kind.Select(parts => long.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var id) ? id : 0).ToList();
            count += await LetInAsync(session, file, statements, chosen).ConfigureAwait(false);
        }

        return count;
    }

    private static async Task<int> LetInAsync(WarehouseSession session, SourceFile file, IReadOnlyList<SqlText> statements, List<long> ids)
    {
        var count = 0;
        foreach (var chosen in ids.Chunk(AtOnce))
        {
            foreach (var statement in statements)
            {
                var changed = await session.ExecuteAsync(statement, new { fileId = file.FileId, chosen }).ConfigureAwait(false);
                count += statement == statements[^1] ? changed : 0;
            }
        }

        return count;
    }
}
