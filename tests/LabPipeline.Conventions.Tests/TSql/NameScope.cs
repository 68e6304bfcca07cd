namespace LabPipeline.Conventions.Tests.TSql;

/// <summary>The sources a column name can belong to: those of a query, then those around it.</summary>
internal sealed class NameScope(NameScope? around)
{
    private readonly List<(string Alias, IReadOnlyList<string> Columns)> _sources = [];

    public IReadOnlyList<(string Alias, IReadOnlyList<string> Columns)> Sources => _sources;

    public void Add(string alias, IReadOnlyList<string> columns) => _sources.Add((alias, columns));

    /// <returns>What is wrong with a column written without its source, or null.</returns>
    public string? Find(string column)
    {
        var found = _sources.Where(source => source.Columns.Contains(column)).Select(source => source.Alias).ToList();
        return found.Count switch
        {
            1 => null,
            0 => around is null ? "is no column of any source here" : around.Find(column),
            _ => $"could belong to {string.Join(" or ", found)}",
        };
    }

    /// <returns>What is wrong with a column written behind its source, or null.</returns>
    public string? Find(string alias, string column)
    {
        foreach (var source in _sources)
        {
            if (source.Alias == alias)
            {
                return source.Columns.Contains(column) ? null : $"is no column of {alias}, which has {string.Join(", ", source.Columns)}";
            }
        }

        return around is null ? $"names {alias}, which is no source here" : around.Find(alias, column);
    }
}
