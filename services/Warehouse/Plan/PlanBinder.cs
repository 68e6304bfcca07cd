using System.Globalization;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Warehouse.Plan;

/// <summary>Turns the members of a plan document into a draft, noting each that cannot be read.</summary>
internal sealed class PlanBinder(List<PlanFault> faults)
{
    private const int MostLength = 32;
    private const int MostNameLength = 64;
    private const int MostTitleLength = 200;
    private const int MostSentenceLength = 1000;
    private const int MostUnitLength = 16;
    private const int MostPieces = 100;
    private const int MostPairs = 100_000;
    private const decimal LargestCoefficient = 1000m;

    public PlanDraft Bind(PlanNode root, PlotSource source)
    {
        var trial = root.Child("trial");
        var design = BindDesign(root.Child("design"));
        var pulls = root.Each("pulls").Select(BindPull).ToList();
        var (plots, paths) = BindPlots(root, source, design.Factors);
        var plan = new TrialPlan
        {
            Code = trial.Text("code", MostLength),
            Mark = trial.Text("mark", MostLength),
            Title = trial.Text("title", MostTitleLength),
            Question = trial.Text("question", MostSentenceLength),
            Season = trial.Whole("season", 2000, 2099),
            Site = trial.Text("site", MostTitleLength),
            TimeZone = trial.Text("timeZone", MostNameLength),
            HarvestedOn = trial.Date("harvestedOn"),
            Design = design,
            Bays = [.. root.Each("bays").Select(BindBay)],
            Plots = plots,
            Pulls = pulls,
            SampleSize = BindSampleSize(root.Child("samples")),
            Rules = BindRules(root.Child("results")),
            Expected = [.. root.Each("expected").SelectMany(node => BindExpected(node, pulls))],
            Repeatability = [.. root.EachIfAny("repeatability").Select(BindRepeatability).OfType<LabRepeatability>()],
            Contrasts = [.. root.EachIfAny("contrasts").Select(BindContrast)],
            Sha256 = "",
        };
        trial.RefuseRest();
        root.RefuseRest();
        return new PlanDraft(plan, paths);
    }

    private static TrialDesign BindDesign(PlanNode node)
    {
        var kind = node.Text("kind", MostLength);
        var found = DesignNames.Find(kind);
        if (found is null && kind.Length > 0)
        {
            node.NoteAt("kind", $"'{kind}'", string.Join(", ", DesignNames.All), "Name one of these designs.");
        }

        var design = new TrialDesign(
            found ?? DesignKind.FactorialRcbd,
            node.Texts("blocks", MostLength),
            [.. node.Each("factors").Select(BindFactor)],
            node.Text("clone", MostNameLength),
            node.TextIfAny("mainPlot", MostNameLength),
            node.TextIfAny("incomplete", MostSentenceLength))
        { Seed = SeedOf(node) };
        node.RefuseRest();
        return design;
    }

    private static long? SeedOf(PlanNode node)
    {
        var seed = node.NumberIfAny("seed", 0, TrialDesign.LargestSeed);
        if (seed is { } number && number != decimal.Truncate(number))
        {
            node.NoteAt("seed", number.ToString(CultureInfo.InvariantCulture), "a whole number", "Write the seed the layout was drawn with, or leave it out.");
        }

        return (long?)seed;
    }

    private static TrialFactor BindFactor(PlanNode node)
    {
        var factor = new TrialFactor(node.Text("name", MostNameLength), node.TextIfAny("unit", MostUnitLength), node.Texts("levels", MostNameLength));
        node.RefuseRest();
        return factor;
    }

    private static TrialBay BindBay(PlanNode node)
    {
        var bay = new TrialBay(node.Text("code", MostLength), node.NumberIfAny("setPointC", -5m, 40m));
        node.RefuseRest();
        return bay;
    }

    private static TrialPull BindPull(PlanNode node)
    {
        var pull = new TrialPull(node.Whole("number", 1, PlanSamples.HighestPull), node.Date("due"), node.Date("opens"), node.Date("closes"));
        node.RefuseRest();
        return pull;
    }

    private static SampleSize BindSampleSize(PlanNode node)
    {
        var size = new SampleSize(node.Whole("tubers", 1, MostPieces), node.Whole("slicesPerTuber", 1, MostPieces), node.Whole("extracts", 1, MostPieces));
        node.RefuseRest();
        return size;
    }

    private static ResultRules BindRules(PlanNode node)
    {
        var rules = new ResultRules(
            node.Text("dryMatterRelation", MostNameLength),
            node.Number("darkBelowHunterL", 0m, 100m),
            node.Whole("severeFromScore", 1, 5),
            node.Text("standardClone", MostNameLength));
        node.RefuseRest();
        return rules;
    }

    private static IEnumerable<ExpectedMeasurement> BindExpected(PlanNode node, List<TrialPull> pulls)
    {
        var quantity = QuantityOf(node);
        if (quantity?.Kind == QuantityKind.Result)
        {
            node.NoteAt("quantity", $"'{quantity.Name}', which is computed", "a quantity an instrument reports", "Name the readings it is computed from.");
        }

        var readings = node.Whole("readings", 1, MostPieces * MostPieces);
        var numbers = node.WholesIfAny("pulls") ?? [.. pulls.Select(pull => pull.Number).Where(number => number > 0)];
        foreach (var unknown in numbers.Where(number => number > 0 && pulls.All(pull => pull.Number != number)))
        {
            node.NoteAt("pulls", $"pull {unknown}", "numbers of pulls of this plan", "Correct the number or add the pull.");
        }

        node.RefuseRest();
        return quantity is null ? [] : numbers.Distinct().Select(number => new ExpectedMeasurement(number, quantity, readings));
    }

    private static LabRepeatability? BindRepeatability(PlanNode node)
    {
        var quantity = QuantityOf(node);
        var constant = node.Number("constant", 0m, 1000m);
        var relative = node.Number("relative", 0m, 1m);
        if (constant == 0 && relative == 0 && node.Has("constant") && node.Has("relative"))
        {
            node.NoteAt("constant", "0 with relative 0", "a repeatability above 0", "Leave the quantity out when its repeatability is not known.");
        }

        var pairs = node.Whole("pairs", 1, MostPairs);
        var source = node.Text("source", MostTitleLength);
        node.RefuseRest();
        return quantity is null ? null : new LabRepeatability(quantity, constant, relative, pairs, source);
    }

    private static PlannedContrast BindContrast(PlanNode node)
    {
        var contrast = new PlannedContrast(
            node.Text("name", MostNameLength),
            node.Texts("factors", MostNameLength),
            node.Numbers("coefficients", -LargestCoefficient, LargestCoefficient));
        node.RefuseRest();
        return contrast;
    }

    private static Quantity? QuantityOf(PlanNode node)
    {
        var name = node.Text("quantity", MostNameLength);
        var quantity = QuantityCatalogue.Find(name);
        if (quantity is null && name.Length > 0)
        {
            node.NoteAt("quantity", $"'{name}'", "the name of a quantity in the data dictionary", "Correct the name.");
        }

        return quantity;
    }

    private static TrialPlot BindPlot(PlanNode node)
    {
        var plot = new TrialPlot(
            node.Text("plot", MostLength),
            node.Text("block", MostLength),
            node.TextIfAny("mainPlot", MostLength),
            node.Text("bay", MostLength),
            node.Map("levels", MostNameLength));
        node.RefuseRest();
        return plot;
    }

    private (IReadOnlyList<TrialPlot> Plots, IReadOnlyList<string> Paths) BindPlots(PlanNode root, PlotSource source, IReadOnlyList<TrialFactor> factors)
    {
        var fileName = root.TextIfAny("plotsFile", MostTitleLength);
        if (fileName is null)
        {
            var nodes = root.Each("plots");
            return ([.. nodes.Select(BindPlot)], [.. nodes.Select(node => node.Path)]);
        }

        if (root.EachIfAny("plots").Count > 0)
        {
            root.NoteAt("plots", "both plots and plotsFile", "one of them", "Keep the plots in the document or in the file.");
        }

        var text = IsPlainName(fileName) ? source.Fetch(fileName) : null;
        if (text is null)
        {
            root.NoteAt("plotsFile", $"'{fileName}'", "the name of a file in the same folder as the document", "Put the file there or correct the name.");
            return ([], []);
        }

        return new PlotsTable(fileName, factors, faults).Read(text);
    }

    private static bool IsPlainName(string fileName) => fileName.Length > 0 && fileName.IndexOfAny(['/', '\\', ':']) < 0;
}
