using System.Collections;
using System.Resources;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using LabPipeline.Board.Bench;
using LabPipeline.Board.Layout;
using LabPipeline.Board.Papers;
using LabPipeline.Board.People;
using LabPipeline.Board.Wording;
using LabPipeline.Quality.Rules;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Thresholds;

namespace LabPipeline.Board.Tests.Wording;

public sealed class TextsTests
{
    private static readonly HashSet<string> Keys = ReadKeys();

    [Fact]
    public void Texts_WhenAPageAsksForOne_AreThereAndNoneIsLeftOver()
    {
        var asked = Sources().SelectMany(path => Regex.Matches(File.ReadAllText(path), "T\\[\"([A-Z][A-Za-z]+\\.[A-Za-z_-]+)\"").Select(match => match.Groups[1].Value))
            .Concat(Mark.Kinds.Keys.Select(kind => "Mark." + kind))
            .Concat(RoleNames.All.SelectMany(role => new[] { "Role." + role, "RoleMay." + role }))
            .Concat(BenchSheet.All.Select(sheet => "Bench." + sheet.Name))
            .Concat(SheetPart.Filled.Select(column => "Column." + column))
            .Concat(["Alert." + AlertStates.Cleared, "Alert." + AlertStates.Settled])
            .Concat(PaperKinds.All.Select(kind => "Paper." + kind))
            .Concat(ThresholdKinds.All.Select(kind => "Threshold." + kind))
            .Concat(RuleDefaults.ControlRules.Concat(RuleDefaults.TrendRules).Select(rule => rule.Name).Append(ControlReview.OutsideTolerance).Select(name => "Rule." + name))
            .Concat(Said.All.Select(word => "Said." + word))
            .Concat(QuantityCatalogue.All.Select(quantity => "Quantity." + quantity.Name))
            .ToHashSet(StringComparer.Ordinal);

        Assert.Empty(asked.Except(Keys));
        Assert.Empty(Keys.Except(asked));
    }

    private static HashSet<string> ReadKeys()
    {
        var resources = new ResourceManager(typeof(Texts)).GetResourceSet(System.Globalization.CultureInfo.InvariantCulture, createIfNotExists: true, tryParents: false)!;
        return resources.Cast<DictionaryEntry>().Select(entry => (string)entry.Key).ToHashSet(StringComparer.Ordinal);
    }

    private static IEnumerable<string> Sources([CallerFilePath] string here = "")
    {
        var board = Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "services", "Board");
        return Directory.EnumerateFiles(board, "*.razor", SearchOption.AllDirectories);
    }
}
