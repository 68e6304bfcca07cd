namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>Splits the rows of a design into sets that share neither a plot nor a random unit, and so are independent.</summary>
internal sealed class RowSets
{
    public RowSets(MixedDesign design)
    {
        var plots = new int[design.Data.Rows];
        var positions = new int[design.Data.Rows];
        for (var plot = 0; plot < design.Subjects.Count; plot++)
        {
            foreach (var (row, position) in design.Subjects[plot].Rows.Zip(design.Subjects[plot].Positions))
            {
                (plots[row], positions[row]) = (plot, position);
            }
        }

        var set = Enumerable.Range(0, design.Data.Rows).ToArray();
        foreach (var groups in design.Groups.Prepend(plots))
        {
            Join(set, groups);
        }

        // Rows in the order of their treatments, so that sets laid out alike are seen to be alike.
        var byTreatment = Comparer<int>.Create((first, second) => design.Fixed.Values.Row(first).SequenceCompareTo(design.Fixed.Values.Row(second)));
        All = [.. set.Index().GroupBy(entry => entry.Item, entry => entry.Index)
            .Select(rows => new RowSet(design, [.. rows.OrderBy(row => row, byTreatment)], plots, positions))];
    }

    public IReadOnlyList<RowSet> All { get; }

    /// <summary>Merges the sets that one group touches, group by group.</summary>
    private static void Join(int[] set, int[] groups)
    {
        foreach (var group in Enumerable.Range(0, set.Length).GroupBy(row => groups[row]))
        {
            var touched = group.Select(row => set[row]).ToHashSet();
            if (touched.Count == 1)
            {
                continue;
            }

            var target = touched.Min();
            for (var row = 0; row < set.Length; row++)
            {
                set[row] = touched.Contains(set[row]) ? target : set[row];
            }
        }
    }
}
