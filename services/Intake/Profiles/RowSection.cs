using LabPipeline.Hosting;

namespace LabPipeline.Intake.Profiles;

/// <summary>Reads "controls", "fryBatches", "missingTexts" and "placeholders".</summary>
internal static class RowSection
{
    /// <summary>Rules of rows that are not about a sample; <c>material</c> is the member naming the control or the batch.</summary>
    public static IReadOnlyList<RowRule> ReadRules(ProfileNode root, string name, string material)
    {
        var rules = new List<RowRule>();
        foreach (var node in root.Children(name))
        {
            var when = node.Child("when");
            var column = when.Text("column");
            var equals = when.OptionalText("equals");
            var startsWith = when.OptionalText("startsWith");
            when.Close();
            if (equals is null == startsWith is null)
            {
                when.FaultHere(equals is null ? "nothing" : "both equals and startsWith", "equals or startsWith");
            }

            rules.Add(new RowRule(new RowCondition(column, equals ?? startsWith ?? "", equals is null), IdentitySection.Source(node, material, optionalCell: false)));
            node.Close();
        }

        return rules;
    }

    public static IReadOnlyList<Placeholder> ReadPlaceholders(ProfileNode root, IReadOnlyList<string> missingTexts)
    {
        var placeholders = new List<Placeholder>();
        foreach (var node in root.Children("placeholders"))
        {
            var placeholder = new Placeholder(node.Text("text"), node.Choice("as", ProfileWords.Placeholders));
            node.Close();
            if (missingTexts.Contains(placeholder.Text, StringComparer.Ordinal) || placeholders.Exists(other => other.Text == placeholder.Text))
            {
                node.Fault("text", $"'{VisibleText.Of(placeholder.Text)}' again", "a text that is declared once");
            }

            placeholders.Add(placeholder);
        }

        return placeholders;
    }
}
