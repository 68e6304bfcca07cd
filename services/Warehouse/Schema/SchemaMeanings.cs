using System.Reflection;

namespace LabPipeline.Warehouse.Schema;

/// <summary>docs/data-dictionary.md as the program reads it: what each table, view and column means.</summary>
public static class SchemaMeanings
{
    private const string Resource = "docs/data-dictionary.md";

    public static IReadOnlyList<DescribedTable> Tables { get; } = Load();

    /// <summary>Reads the third-level headings: a sentence, then a table of columns and meanings.</summary>
    public static IReadOnlyList<DescribedTable> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var tables = new List<DescribedTable>();
        var ofColumns = false;
        foreach (var line in text.ReplaceLineEndings("\n").Split('\n'))
        {
            if (line.StartsWith('#'))
            {
                ofColumns = false;
                if (line.StartsWith("### ", StringComparison.Ordinal))
                {
                    tables.Add(new DescribedTable(line[4..].Trim(), "", []));
                }
            }
            else if (tables.Count > 0 && line.StartsWith('|'))
            {
                ofColumns |= line.StartsWith("| column |", StringComparison.Ordinal);
                tables[^1] = ofColumns ? WithColumns(tables[^1], line) : tables[^1];
            }
            else if (tables.Count > 0 && line.Length > 0 && tables[^1] is { Meaning: "" } last)
            {
                tables[^1] = last with { Meaning = line.Trim() };
            }
            else if (line.Length == 0)
            {
                ofColumns = false;
            }
        }

        return tables;
    }

    /// <returns>What the column of that table or view means; empty where the dictionary does not tell.</returns>
    public static string MeaningOf(string table, string column) =>
        Tables.FirstOrDefault(described => described.Name == table)?.Columns.FirstOrDefault(described => described.Name == column)?.Meaning ?? "";

    private static DescribedTable WithColumns(DescribedTable table, string line)
    {
        var cells = line.Trim('|', ' ').Split('|', 2);
        var names = cells[0].Trim();
        if (names is "column" || names.StartsWith('-') || cells.Length < 2)
        {
            return table;
        }

        var meaning = cells[1].Trim().Replace("`", "", StringComparison.Ordinal);
        return table with { Columns = [.. table.Columns, .. names.Split(',').Select(name => new DescribedColumn(name.Trim(), meaning))] };
    }

    private static IReadOnlyList<DescribedTable> Load()
    {
        using var reader = new StreamReader(Assembly.GetExecutingAssembly().GetManifestResourceStream(Resource)!);
        return Parse(reader.ReadToEnd());
    }
}
