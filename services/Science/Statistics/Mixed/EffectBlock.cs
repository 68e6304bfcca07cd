namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>
/// Fixed effects that plots join, directly or through others: normally the pulls of one treatment combination. No plot touches two blocks, so
/// everything is summed block by block and the work grows with the number of treatments and not with its cube.
/// </summary>
/// <param name="Effects">Its columns of fixed effects.</param>
/// <param name="Units">Random units its plots belong to.</param>
/// <param name="Plots">Its plots.</param>
internal sealed record EffectBlock(int[] Effects, int[] Units, IReadOnlyList<BlockPlot> Plots)
{
    public static IReadOnlyList<EffectBlock> Of(IReadOnlyList<Subject> subjects, int effects)
    {
        var owner = Enumerable.Range(0, effects).ToArray();
        foreach (var subject in subjects)
        {
            var joined = subject.Effects.Select(column => owner[column]).ToHashSet();
            var target = joined.Min();
            for (var column = 0; column < owner.Length && joined.Count > 1; column++)
            {
                owner[column] = joined.Contains(owner[column]) ? target : owner[column];
            }
        }

        var plots = subjects.Index().ToLookup(entry => owner[entry.Item.Effects[0]]);
        return [.. Enumerable.Range(0, effects).GroupBy(column => owner[column]).Select(block => Of([.. block], plots[block.Key]))];
    }

    private static EffectBlock Of(int[] effects, IEnumerable<(int Number, Subject Subject)> plots)
    {
        int[] units = [.. plots.SelectMany(plot => plot.Subject.Units).Distinct().Order()];
        return new EffectBlock(effects, units,
        [
            .. plots.Select(plot => new BlockPlot(plot.Subject, plot.Number,
            [
                .. plot.Subject.Units.Select(unit => Array.BinarySearch(units, unit)),
                .. plot.Subject.Effects.Select(effect => units.Length + Array.BinarySearch(effects, effect)),
            ])),
        ]);
    }
}
