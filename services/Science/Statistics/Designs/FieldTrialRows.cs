using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Designs;

/// <summary>The plot means checked against the stated design, and turned into model data.</summary>
internal sealed class FieldTrialRows
{
    private readonly FieldTrialDesign _design;
    private readonly IReadOnlyList<PlotMean> _rows;
    private readonly string[] _blocks;
    private readonly string[] _mainPlots;
    private readonly string[] _plots;

    public FieldTrialRows(FieldTrialDesign design, IReadOnlyList<PlotMean> rows)
    {
        design.Validate();
        _design = design;
        _rows = rows;
        _blocks = [.. rows.Select(row => row.Block).Distinct()];
        _plots = [.. rows.Select(row => row.Plot).Distinct()];
        _mainPlots = design.Layout == TrialLayout.SplitPlot ? [.. rows.Select(row => row.MainPlot ?? Missing(row, "main plot")).Distinct()] : [];
        foreach (var row in rows)
        {
            Require(row);
        }

        RequireOneTreatment(row => row.Plot, "plot", [.. design.Factors.Select(factor => factor.Name)]);
        if (design.Layout == TrialLayout.SplitPlot)
        {
            RequireOneTreatment(row => row.MainPlot!, "main plot", design.MainPlotFactors);
        }

        if (rows.GroupBy(row => (row.Plot, row.Pull)).FirstOrDefault(group => group.Count() > 1) is { } twice)
        {
            throw new ArgumentException($"Plot {twice.Key.Plot} has {twice.Count()} values{(twice.Key.Pull is { } pull ? $" at pull {pull}" : "")}; expected one plot mean. Average subsamples first.", nameof(rows));
        }

        if (_blocks.Length < 2)
        {
            throw new ArgumentException($"Found {_blocks.Length} block(s); at least 2 are needed, or there is no error to test against.", nameof(rows));
        }
    }

    /// <summary>The pulls with values, in planned order: one that has not been taken yet is no gap in the data.</summary>
    public IReadOnlyList<string> PullsTaken => [.. _design.Pulls.Select(pull => pull.Name).Where(name => _rows.Any(row => row.Pull == name))];

    /// <summary>Whether every block holds every treatment combination once at every pull taken.</summary>
    public bool IsComplete(string? pull) => Select(pull).Count == _blocks.Length * Cells * (pull is null ? Math.Max(1, PullsTaken.Count) : 1)
        && Select(pull).GroupBy(row => (row.Block, row.Pull, Cell(row))).All(group => group.Count() == 1);

    public IReadOnlyList<PlotMean> Select(string? pull) => pull is null ? _rows : [.. _rows.Where(row => row.Pull == pull)];

    /// <param name="pull">One pull, or null for all rows with the pull as a factor where there are pulls.</param>
    public ModelData Data(string? pull)
    {
        var rows = Select(pull);
        var factors = new List<Factor> { Factor.Of(FieldTrialDesign.Block, _blocks, [.. rows.Select(row => row.Block)]) };
        if (_mainPlots.Length > 0)
        {
            factors.Add(Factor.Of(FieldTrialDesign.MainPlot, _mainPlots, [.. rows.Select(row => row.MainPlot!)]));
        }

        factors.AddRange(_design.Factors.Select(factor => Factor.Of(factor.Name, factor.Levels, [.. rows.Select(row => row.Levels[factor.Name])])));
        if (pull is null && _design.Pulls.Count > 0)
        {
            factors.Add(Factor.Of(FieldTrialDesign.Plot, _plots, [.. rows.Select(row => row.Plot)]));
            factors.Add(Factor.Of(FieldTrialDesign.Pull, PullsTaken, [.. rows.Select(row => row.Pull!)]));
        }

        return new ModelData([.. rows.Select(row => _design.Scale.Transform(row.Value))], factors);
    }

    public double DayOf(PlotMean row) => _design.Pulls.Single(pull => pull.Name == row.Pull).Day;

    private int Cells => _design.Factors.Aggregate(1, (product, factor) => product * factor.Levels.Count);

    private string Cell(PlotMean row) => string.Join(":", _design.Factors.Select(factor => row.Levels[factor.Name]));

    private void Require(PlotMean row)
    {
        if (_design.Factors.FirstOrDefault(factor => !row.Levels.ContainsKey(factor.Name)) is { } factor)
        {
            Missing(row, $"level of {factor.Name}");
        }

        if (_design.Pulls.Count > 0 && _design.Pulls.All(pull => pull.Name != row.Pull))
        {
            throw new ArgumentException($"Plot {row.Plot}: found pull '{row.Pull}'; expected one of {string.Join(", ", _design.Pulls.Select(pull => pull.Name))}.", nameof(row));
        }

        if (_design.Pulls.Count == 0 && row.Pull is not null)
        {
            throw new ArgumentException($"Plot {row.Plot}: found pull '{row.Pull}'; the design states no pulls. State them, or pass one pull without its name.", nameof(row));
        }

        if (_design.Scale.Refusal(row.Value) is { } reason)
        {
            throw new ArgumentException($"Plot {row.Plot}{(row.Pull is null ? "" : $", pull {row.Pull}")}: {reason}", nameof(row));
        }
    }

    private void RequireOneTreatment(Func<PlotMean, string> unit, string what, IReadOnlyList<string> factors)
    {
        var mixed = _rows.GroupBy(unit).FirstOrDefault(group =>
            group.Select(row => (row.Block, row.MainPlot)).Distinct().Count() > 1
            || factors.Any(factor => group.Select(row => row.Levels[factor]).Distinct().Count() > 1));
        if (mixed is not null)
        {
            throw new ArgumentException($"The rows of {what} {mixed.Key} differ in block or in {string.Join(", ", factors)}; expected one treatment a {what}.", nameof(unit));
        }
    }

    private static string Missing(PlotMean row, string what) =>
        throw new ArgumentException($"Plot {row.Plot} has no {what}; the stated design needs it in every row.", nameof(row));
}
