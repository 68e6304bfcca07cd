using LabPipeline.Hosting;
using LabPipeline.Intake.Text;

namespace LabPipeline.Intake.Profiles;

/// <summary>Reads "text". Members of other layouts are not asked for, so they are faults.</summary>
internal static class TextSection
{
    private const int MostLines = 10_000;
    private const int LongestLine = 65_536;

    public static TextRule Read(ProfileNode node)
    {
        var layout = node.Choice("layout", ProfileWords.Layouts);
        var rule = new TextRule
        {
            Encoding = node.Choice("encoding", ProfileWords.Encodings),
            Layout = layout,
            Numbers = Numbers(node),
            CommentPrefix = layout == TextLayout.Cgats ? "#" : node.OptionalText("commentPrefix"),
        };
        rule = layout switch
        {
            TextLayout.Delimited => Delimited(node, rule),
            TextLayout.FixedWidth => FixedWidth(node, rule),
            TextLayout.KeyValueBlocks => Blocks(node, rule),
            _ => rule,
        };
        node.Close();
        return rule;
    }

    private static NumberFormat Numbers(ProfileNode node)
    {
        var mark = node.Choice("decimalMark", ProfileWords.DecimalMarks);
        var group = node.Choice("groupMark", ProfileWords.GroupMarks, GroupMark.None);
        var format = new NumberFormat(mark, group, node.Flag("exponent", false));
        if (format.IsGroupMark(mark))
        {
            node.Fault("groupMark", "the decimal mark", "another mark than the decimal mark");
        }

        return format;
    }

    private static TextRule Delimited(ProfileNode node, TextRule rule)
    {
        var delimiter = Symbol(node, "delimiter", null) ?? ',';
        var quote = Symbol(node, "quote", "none");
        if (char.IsLetterOrDigit(delimiter) || delimiter is '+' or '-' or '\n' or '\r' || delimiter == quote)
        {
            node.Fault("delimiter", $"'{VisibleText.Of([delimiter])}'", "a mark that cannot be part of a number and is not the quote");
        }

        if (delimiter == rule.Numbers.DecimalMark && quote is null)
        {
            node.Fault("delimiter", "the decimal mark", "another mark, or quotes around the cells");
        }

        var header = node.Whole("headerLine", 1, MostLines, 0);
        var columns = node.Texts("columns");
        if (header > 0 == columns.Count > 0)
        {
            node.Fault("headerLine", header > 0 ? "it together with columns" : "nothing", "either headerLine, or columns for a file without one");
        }

        return rule with
        {
            Delimiter = delimiter,
            Quote = quote,
            HeaderLine = header,
            Columns = columns,
            SkipLines = node.Whole("skipLines", 0, MostLines, 0),
        };
    }

    private static TextRule FixedWidth(ProfileNode node, TextRule rule)
    {
        var fields = new List<FixedField>();
        foreach (var child in node.Children("fields"))
        {
            var field = new FixedField(child.Text("name"), child.Whole("start", 1, LongestLine), child.Whole("length", 1, LongestLine));
            child.Close();
            if (fields.Find(other => other.Start < field.Start + field.Length && field.Start < other.Start + other.Length) is { } overlapped)
            {
                child.FaultHere($"'{field.Name}' over '{overlapped.Name}'", "fields that do not overlap");
            }

            if (fields.Exists(other => other.Name == field.Name))
            {
                child.Fault("name", $"'{field.Name}' again", "every name once");
            }

            fields.Add(field);
        }

        if (fields.Count == 0)
        {
            node.Fault("fields", "nothing", "the fields of a line with name, start and length");
        }

        return rule with { Fields = fields, SkipLines = node.Whole("skipLines", 0, MostLines, 0) };
    }

    private static TextRule Blocks(ProfileNode node, TextRule rule) => rule with
    {
        KeySeparator = node.Text("keySeparator"),
        BlockSeparator = node.AnyText("blockSeparator") ?? "",
        SkipLines = node.Whole("skipLines", 0, MostLines, 0),
    };

    private static char? Symbol(ProfileNode node, string name, string? none)
    {
        var text = node.Text(name);
        if (text == none)
        {
            return null;
        }

        if (text.Length != 1)
        {
            node.Fault(name, $"'{VisibleText.Of(text)}'", none is null ? "one character" : $"one character or {none}");
        }

        return text.Length == 1 ? text[0] : null;
    }
}
