using FsCheck.Xunit;
using LabPipeline.Science.Statistics.LinearModels;
using LabPipeline.Science.Statistics.Mixed;

namespace LabPipeline.Science.Tests.Statistics.LinearModels;

/// <summary>What must hold whatever the numbers: order, shift and scale of an unbalanced factorial in blocks.</summary>
public sealed class LinearModelPropertyTests
{
    private static readonly Term[] Terms = [Term.Of("block"), Term.Of("clone"), Term.Of("rate"), Term.Of("clone", "rate")];

    [Property(MaxTest = 50)]
    public void Anova_WhenRowsAreShuffled_StaysTheSame(int seed)
    {
        var order = Enumerable.Range(0, 22).ToArray();
        new Random(seed).Shuffle(order);

        foreach (var kind in Enum.GetValues<SumsOfSquares>())
        {
            SameTables(Fit(seed, value => value, null).Anova(kind), Fit(seed, value => value, order).Anova(kind), 1);
        }
    }

    [Property(MaxTest = 50)]
    public void Means_WhenAConstantIsAdded_ShiftAlone(int seed)
    {
        var (before, after) = (Fit(seed, value => value, null), Fit(seed, value => value + 1e6, null));

        SameTables(before.Anova(SumsOfSquares.TypeThree), after.Anova(SumsOfSquares.TypeThree), 1);
        foreach (var (left, right) in before.Means("clone", "rate").Cells.Zip(after.Means("clone", "rate").Cells))
        {
            Assert.Equal(left.Value!.Value + 1e6, right.Value!.Value, 1e-7);
            CheckData.Near(left.Estimate!.StandardError, right.Estimate!.StandardError, 1e-7);
        }
    }

    [Property(MaxTest = 50)]
    public void Anova_WhenTheUnitChanges_KeepsEveryF(int seed) =>
        SameTables(Fit(seed, value => value, null).Anova(SumsOfSquares.TypeTwo), Fit(seed, value => 18.0156 * value, null).Anova(SumsOfSquares.TypeTwo), 18.0156 * 18.0156);

    [Property(MaxTest = 15)]
    public void MixedTests_WhenShuffledShiftedAndScaled_StayTheSame(int seed)
    {
        var order = Enumerable.Range(0, 22).ToArray();
        new Random(seed).Shuffle(order);
        var before = Mixed(seed, value => value, null).Tests(DegreesOfFreedom.KenwardRoger);
        var after = Mixed(seed, value => (7 * value) + 1000, order).Tests(DegreesOfFreedom.KenwardRoger);

        foreach (var row in before.Rows)
        {
            // The search stops where rounding hides further descent: about 1e-6 in a variance ratio.
            Assert.Equal(row.F!.Value, after.Find(row.Term).F!.Value, 1e-5 * (1 + row.F.Value));
            CheckData.Near(row.DenominatorDf!.Value, after.Find(row.Term).DenominatorDf, 1e-4);
        }
    }

    [Property(MaxTest = 50)]
    public void Leverages_Always_SumToTheNumberOfEffects(int seed) =>
        Assert.Equal(22 - Fit(seed, value => value, null).ResidualDf, Fit(seed, value => value, null).Leverages.Sum(), 1e-9);

    private static LinearFit Fit(int seed, Func<double, double> change, int[]? order) => LinearModel.Fit(Data(seed, change, order), Terms);

    private static MixedFit Mixed(int seed, Func<double, double> change, int[]? order) =>
        MixedModel.Fit(Data(seed, change, order), Terms[1..], [Term.Of("block")]);

    /// <summary>4 blocks x 2 clones x 3 rates without two plots.</summary>
    private static ModelData Data(int seed, Func<double, double> change, int[]? order)
    {
        var random = new Random(seed);
        var blocks = Enumerable.Range(0, 4).Select(_ => 2 * random.NextDouble()).ToArray();
        var rows = (from block in Enumerable.Range(0, 4) from clone in Enumerable.Range(0, 2) from rate in Enumerable.Range(0, 3) select (block, clone, rate))
            .Where(row => row is not ((0, 0, 0) or (2, 1, 2)))
            .Select(row => (row.block, row.clone, row.rate, value: blocks[row.block] + row.rate + random.NextDouble() + random.NextDouble()))
            .ToArray();
        var kept = order?.Select(index => rows[index]).ToArray() ?? rows;
        return new ModelData([.. kept.Select(row => change(row.value))],
            [Factor.Of("block", ["0", "1", "2", "3"], [.. kept.Select(row => $"{row.block}")]), Factor.Of("clone", ["0", "1"], [.. kept.Select(row => $"{row.clone}")]),
                Factor.Of("rate", ["0", "1", "2"], [.. kept.Select(row => $"{row.rate}")])]);
    }

    private static void SameTables(AnovaTable before, AnovaTable after, double scale)
    {
        Assert.Equal(before.Rows.Select(row => (row.Term, row.Df)), after.Rows.Select(row => (row.Term, row.Df)));
        foreach (var (left, right) in before.Rows.Zip(after.Rows))
        {
            Assert.Equal(left.SumOfSquares!.Value * scale, right.SumOfSquares!.Value, 1e-7 * scale * (1 + left.SumOfSquares.Value));
            Assert.Equal(left.F ?? 0, right.F ?? 0, 1e-7 * (1 + (left.F ?? 0)));
        }
    }
}
