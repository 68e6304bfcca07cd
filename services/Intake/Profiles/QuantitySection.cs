using LabPipeline.Hosting;
using LabPipeline.Intake.Text;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Intake.Profiles;

/// <summary>Reads "quantities" or "oneValueRows".</summary>
internal sealed class QuantitySection(QuantityKind kind, NumberFormat numbers)
{
    public IReadOnlyList<QuantityRule> ReadColumns(ProfileNode root)
    {
        var rules = new List<QuantityRule>();
        foreach (var node in root.Children("quantities"))
        {
            var value = new CellSource(node.OptionalText("column"), node.OptionalText("constant"));
            if (value.Column is null == value.Constant is null)
            {
                node.FaultHere(value.Column is null ? "nothing" : "both column and constant", "column or constant");
            }

            CheckConstant(node, value.Constant);
            var unitColumn = node.OptionalText("unitColumn");
            var unitInCell = node.Flag("unitInCell", false);
            var rule = ReadRule(node, value, unitColumn, unitInCell);
            CheckUnique(node, rule, rules);
            rules.Add(rule);
        }

        return rules;
    }

    public OneValueRows ReadOneValueRows(ProfileNode node)
    {
        var quantityColumn = node.Text("quantityColumn");
        var value = new CellSource(node.Text("valueColumn"), null);
        var unitColumn = node.OptionalText("unitColumn");
        var unitInCell = node.Flag("unitInCell", false);
        var map = new Dictionary<string, QuantityRule>(StringComparer.Ordinal);
        var entries = node.Child("map");
        foreach (var name in entries.Names)
        {
            var entry = entries.Child(name);
            map[name] = ReadRule(entry, value, entry.Has("unit") ? null : unitColumn, !entry.Has("unit") && unitInCell);
        }

        if (map.Count == 0)
        {
            node.Fault("map", "nothing", "at least one name with its quantity");
        }

        var ignored = node.Texts("ignored");
        foreach (var name in ignored.Where(map.ContainsKey))
        {
            node.Fault("ignored", $"'{name}', which is mapped", "names that are not in the map");
        }

        node.Close();
        return new OneValueRows(quantityColumn, map, ignored);
    }

    private QuantityRule ReadRule(ProfileNode node, CellSource value, string? unitColumn, bool unitInCell)
    {
        var quantity = FindQuantity(node);
        var unitText = node.OptionalText("unit");
        var ways = (unitText is null ? 0 : 1) + (unitColumn is null ? 0 : 1) + (unitInCell ? 1 : 0);
        if (ways != 1)
        {
            node.Fault("unit", ways == 0 ? "nothing" : "more than one place for the unit", "one of unit, unitColumn and unitInCell");
        }

        var rule = new QuantityRule(
            quantity ?? QuantityCatalogue.GlucoseInExtract,
            value,
            unitText is null || quantity is null ? null : FindUnit(node, unitText, quantity),
            unitText ?? "",
            unitColumn,
            unitInCell,
            Marker(node),
            node.Number("min"),
            node.Number("max"),
            node.Choice("missing", ProfileWords.MissingValues, false));
        if (rule.Lowest > rule.Highest)
        {
            node.Fault("min", "more than max", "at most max");
        }

        node.Close();
        return rule;
    }

    private Quantity? FindQuantity(ProfileNode node)
    {
        var name = node.Text("quantity");
        var quantity = QuantityCatalogue.Find(name);
        if (name.Length > 0 && (quantity is null || !BelongsToKind(quantity)))
        {
            var names = QuantityCatalogue.All.Where(BelongsToKind).Select(known => known.Name);
            node.Fault("quantity", $"'{VisibleText.Of(name)}'", $"one of {string.Join(", ", names)}");
        }

        return quantity;
    }

    // Without a valid kind, which is a fault of its own, every measured quantity is let pass.
    private bool BelongsToKind(Quantity quantity) => quantity.Kind == kind || (kind == default && quantity.Kind != QuantityKind.Result);

    private static Unit? FindUnit(ProfileNode node, string text, Quantity quantity)
    {
        var unit = UnitConversion.Find(text);
        if (text.Length > 0 && (unit is null || !UnitConversion.CanConvert(unit, quantity)))
        {
            var fitting = UnitConversion.KnownSpellings.Where(spelling => UnitConversion.CanConvert(UnitConversion.Find(spelling)!, quantity));
            node.Fault("unit", $"'{VisibleText.Of(text)}'", $"a unit of {quantity.Name}: {string.Join(", ", fitting)}");
        }

        return unit;
    }

    private static string? Marker(ProfileNode node)
    {
        var marker = node.OptionalText("belowLimit");
        if (marker is { Length: > 0 } && (char.IsAsciiDigit(marker[0]) || marker[0] is '+' or '-' or '.' or ',' or ' '))
        {
            node.Fault("belowLimit", $"'{VisibleText.Of(marker)}'", "a mark that cannot begin a number, such as <");
        }

        return marker;
    }

    private void CheckConstant(ProfileNode node, string? constant)
    {
        if (constant is { Length: > 0 } && NumberGrammar.Parse(constant, numbers, out _) != NumberFault.None)
        {
            node.Fault("constant", $"'{VisibleText.Of(constant)}'", "a number written like those of the file");
        }
    }

    private static void CheckUnique(ProfileNode node, QuantityRule rule, List<QuantityRule> before)
    {
        if (before.Exists(other => other.Quantity == rule.Quantity))
        {
            node.Fault("quantity", $"'{rule.Quantity.Name}' again", "every quantity once");
        }

        if (rule.Value.Column is { } column && before.Exists(other => other.Value.Column == column))
        {
            node.Fault("column", $"'{VisibleText.Of(column)}' again", "a column of its own");
        }
    }
}
