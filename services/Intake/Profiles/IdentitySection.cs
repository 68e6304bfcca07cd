using LabPipeline.Intake.Reading;

namespace LabPipeline.Intake.Profiles;

/// <summary>Reads "instrument" and "identity", and the sources of other sections.</summary>
internal static class IdentitySection
{
    public static IdentityRule Read(ProfileNode root, ReadingSubject subject)
    {
        var node = root.Child("identity");
        var rule = new IdentityRule
        {
            Instrument = Source(root, "instrument", optionalCell: false),
            Run = Source(node, "run", optionalCell: false),
            Barcode = subject == ReadingSubject.Sample ? Barcode(node) : null,
            Material = subject == ReadingSubject.Sample ? null : Source(node, subject == ReadingSubject.Control ? "material" : "batch", optionalCell: false),
            Operator = Optional(node, "operator"),
            Extract = Optional(node, "extract"),
            Replicate = Optional(node, "replicate"),
            Tuber = Optional(node, "tuber"),
            Slice = Optional(node, "slice"),
        };
        node.Close();
        CheckColumns(node, rule);
        return rule;
    }

    public static CellSource Source(ProfileNode parent, string name, bool optionalCell) => Source(parent.Child(name), optionalCell);

    private static CellSource Source(ProfileNode node, bool optionalCell)
    {
        var column = node.OptionalText("column");
        var constant = node.OptionalText("constant");
        var required = !optionalCell || node.Flag("required", true);
        node.Close();
        if (column is null == constant is null)
        {
            node.FaultHere(column is null ? "nothing" : "both column and constant", "column or constant");
        }

        return new CellSource(column, column is null ? constant : null, required);
    }

    private static CellSource? Optional(ProfileNode node, string name) =>
        node.OptionalChild(name) is { } child ? Source(child, optionalCell: true) : null;

    private static CellSource Barcode(ProfileNode node)
    {
        var child = node.Child("barcode");
        var source = new CellSource(child.Text("column"), null);
        child.Close();
        return source;
    }

    private static void CheckColumns(ProfileNode node, IdentityRule rule)
    {
        (string Name, CellSource? Source)[] parts =
        [
            ("run", rule.Run), ("barcode", rule.Barcode), ("operator", rule.Operator), ("extract", rule.Extract),
            ("replicate", rule.Replicate), ("tuber", rule.Tuber), ("slice", rule.Slice),
        ];
        var taken = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (name, source) in parts)
        {
            if (source?.Column is { Length: > 0 } column && !taken.TryAdd(column, name))
            {
                node.Fault($"{name}.column", $"'{column}', which is already {taken[column]}", "a column of its own");
            }
        }

        foreach (var (name, source) in parts[^3..])
        {
            if (source?.Constant is { Length: > 0 } constant && !(constant.Length <= 4 && constant.All(char.IsAsciiDigit)))
            {
                node.Fault($"{name}.constant", $"'{constant}'", "a whole number from 0 to 9999");
            }
        }
    }
}
