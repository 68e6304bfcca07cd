using System.Reflection;
using System.Text;

namespace LabPipeline.Testing;

/// <summary>One file of check values, embedded from the Reference folder; rows are looked up by column name.</summary>
public sealed class ReferenceTable
{
    private const string Prefix = "LabPipeline.Testing.Reference.";

    private readonly Dictionary<string, int> _columns;

    private ReferenceTable(string name, IReadOnlyList<string[]> lines)
    {
        Name = name;
        _columns = lines[0].Select((column, index) => (column, index)).ToDictionary(pair => pair.column, pair => pair.index);
        Rows = [.. lines.Skip(1).Select((cells, index) => new ReferenceRow(this, index + 2, cells))];
    }

    public string Name { get; }

    public IReadOnlyList<string> Columns => [.. _columns.OrderBy(pair => pair.Value).Select(pair => pair.Key)];

    public IReadOnlyList<ReferenceRow> Rows { get; }

    /// <summary>Names of all embedded files, a folder written with a point: "G_nist_strd.SmLs01.csv".</summary>
    public static IReadOnlyList<string> ResourceNames =>
        [.. Assembly.GetExecutingAssembly().GetManifestResourceNames().Where(name => name.StartsWith(Prefix, StringComparison.Ordinal)).Select(name => name[Prefix.Length..])];

    /// <param name="name">File name with its folder where there is one: "C_worked_examples.csv", "G_nist_strd/SmLs01.csv".</param>
    public static ReferenceTable Load(string name) => new(name, Split(TextOf(name)));

    /// <summary>The file as it was embedded.</summary>
    public static string TextOf(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Prefix + name.Replace('/', '.'))
            ?? throw new FileNotFoundException($"No embedded check file '{name}'.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    public ReferenceRow Find(string column, string value) => Rows.Single(row => row.Text(column) == value);

    internal int IndexOf(string column) => _columns.TryGetValue(column, out var index)
        ? index
        : throw new KeyNotFoundException($"{Name} has no column '{column}'; it has {string.Join(", ", Columns)}.");

    private static List<string[]> Split(string text)
    {
        var lines = new List<string[]>();
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        for (var position = 0; position < text.Length; position++)
        {
            var symbol = text[position];
            if (symbol == '"' && quoted && position + 1 < text.Length && text[position + 1] == '"')
            {
                cell.Append(symbol);
                position++;
            }
            else if (symbol == '"')
            {
                quoted = !quoted;
            }
            else if (symbol == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else if (symbol == '\n' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
                lines.Add([.. cells]);
                cells.Clear();
            }
            else if (symbol != '\r')
            {
                cell.Append(symbol);
            }
        }

        return lines;
    }
}
