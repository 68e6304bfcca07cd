using LabPipeline.Hosting;
using LabPipeline.Intake.Text;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Intake.Profiles;

/// <summary>Reads "method".</summary>
internal static class MethodSection
{
    public static MethodFacts Read(ProfileNode node)
    {
        var facts = new Dictionary<string, string>(StringComparer.Ordinal);
        if (node.OptionalChild("facts") is { } stated)
        {
            foreach (var name in stated.Names)
            {
                facts[name] = stated.Text(name);
            }
        }

        var method = new MethodFacts(node.Text("name"), node.Text("version"), facts, Limits(node));
        node.Close();
        return method;
    }

    private static Dictionary<string, decimal> Limits(ProfileNode node)
    {
        var limits = new Dictionary<string, decimal>(StringComparer.Ordinal);
        if (node.OptionalChild("limitsOfQuantitation") is { } stated)
        {
            foreach (var name in stated.Names)
            {
                if (Limit(stated, name) is { } limit)
                {
                    limits[name] = limit;
                }
            }
        }

        return limits;
    }

    private static decimal? Limit(ProfileNode stated, string name)
    {
        var node = stated.Child(name);
        var value = node.Number("value");
        var unitText = node.Text("unit");
        node.Close();
        if (QuantityCatalogue.Find(name) is not { } quantity)
        {
            stated.Fault(name, "a limit of it", "the name of a quantity");
            return null;
        }

        if (value is null or <= 0m)
        {
            node.Fault("value", value is null ? "nothing" : "0 or less", "a number above 0");
            return null;
        }

        if (UnitConversion.Find(unitText) is not { } unit || UnitConversion.Convert(value.Value, unit, quantity) is not { } limit)
        {
            node.Fault("unit", $"'{VisibleText.Of(unitText)}'", $"a unit of {quantity.Name} such as {quantity.Unit}");
            return null;
        }

        return StoredPrecision.Fit(limit);
    }
}
