namespace LabPipeline.Science.Statistics;

/// <summary>Ranks from 1, equal values sharing the mean of their ranks.</summary>
/// <param name="Ranks">In the order of the values.</param>
/// <param name="Ties">The size of each set of equal values, singles included.</param>
internal sealed record MidRanks(IReadOnlyList<double> Ranks, IReadOnlyList<int> Ties)
{
    internal static MidRanks Of(IReadOnlyList<double> values)
    {
        var order = Enumerable.Range(0, values.Count).OrderBy(index => values[index]).ToArray();
        var ranks = new double[values.Count];
        var ties = new List<int>();
        for (var start = 0; start < order.Length;)
        {
            var end = start + 1;
            while (end < order.Length && values[order[end]] == values[order[start]])
            {
                end++;
            }

            for (var place = start; place < end; place++)
            {
                ranks[order[place]] = (start + 1 + end) / 2.0;
            }

            ties.Add(end - start);
            start = end;
        }

        return new MidRanks(ranks, ties);
    }
}
