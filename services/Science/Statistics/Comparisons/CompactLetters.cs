namespace LabPipeline.Science.Statistics.Comparisons;

/// <summary>Letters beside means: two means share a letter exactly when they are not shown to differ.</summary>
/// <remarks>
/// Insert and absorb (Piepho 2004, J. Comp. Graph. Statist. 13:456): start with one letter for all; each different pair splits
/// every letter that joins them; a letter held by a subset of another's means is absorbed. Then letters whose every pair
/// is joined by other letters are swept out. Works for any pattern, so letters need not be contiguous.
/// "Not shown to differ" is not "equal": print the intervals as well.
/// </remarks>
public static class CompactLetters
{
    private const string Alphabet = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";

    /// <summary>Splits can multiply for contrived patterns; past this a table of pairs reads better anyway.</summary>
    private const int MostSets = 5000;

    /// <summary>Letters for means compared by one procedure over all pairs.</summary>
    /// <param name="means">The means.</param>
    /// <param name="comparisons">All pairs of them.</param>
    /// <param name="order">Where the letter a goes.</param>
    /// <returns>One string for each mean, in the order of the means.</returns>
    /// <exception cref="ArgumentException">A pair is missing from the comparisons.</exception>
    /// <exception cref="NotEstimableException">More than 52 letters would be needed.</exception>
    public static IReadOnlyList<string> Of(ComparedMeans means, ComparisonSet comparisons, LetterOrder order)
    {
        ArgumentNullException.ThrowIfNull(means);
        ArgumentNullException.ThrowIfNull(comparisons);
        var judged = comparisons.Comparisons.ToDictionary(
            pair => (Math.Min(pair.First, pair.Second), Math.Max(pair.First, pair.Second)), comparisons.IsDifferent);
        var expected = means.Count * (means.Count - 1) / 2;
        if (judged.Count != expected)
        {
            throw new ArgumentException(Sample.Text($"Found {judged.Count} comparisons of {means.Count} means; letters need all {expected} pairs."), nameof(comparisons));
        }

        return Of([.. means.Means.Select(mean => mean.Mean)], (i, j) => judged[(i, j)], order);
    }

    /// <summary>Letters from any rule that tells which pairs differ.</summary>
    /// <param name="means">At least one finite mean.</param>
    /// <param name="differ">Whether the means at positions i &lt; j differ.</param>
    /// <param name="order">Where the letter a goes.</param>
    /// <returns>One string for each mean, in the order of the means.</returns>
    /// <exception cref="ArgumentException">No means, or one that is not finite.</exception>
    /// <exception cref="NotEstimableException">More than 52 letters would be needed.</exception>
    public static IReadOnlyList<string> Of(IReadOnlyList<double> means, Func<int, int, bool> differ, LetterOrder order)
    {
        Sample.Check(means, 1, "The list of means");
        ArgumentNullException.ThrowIfNull(differ);
        var sign = order == LetterOrder.HighestFirst ? -1 : 1;
        var places = Enumerable.Range(0, means.Count).OrderBy(index => sign * means[index]).ToArray();
        bool Differ(int a, int b) => differ(Math.Min(places[a], places[b]), Math.Max(places[a], places[b]));

        var sets = Sweep(InsertAndAbsorb(means.Count, Differ));
        if (sets.Count > Alphabet.Length)
        {
            throw TooMany();
        }

        sets.Sort(ByFirstMeans);
        var letters = new string[means.Count];
        for (var place = 0; place < places.Length; place++)
        {
            letters[places[place]] = string.Concat(sets.Select((set, letter) => set[place] ? Alphabet[letter].ToString() : ""));
        }

        return letters;
    }

    private static List<bool[]> InsertAndAbsorb(int count, Func<int, int, bool> differ)
    {
        List<bool[]> sets = [[.. Enumerable.Repeat(true, count)]];
        for (var i = 0; i < count; i++)
        {
            for (var j = i + 1; j < count; j++)
            {
                if (differ(i, j))
                {
                    sets = Split(sets, i, j);
                }
            }
        }

        return sets;
    }

    private static List<bool[]> Split(List<bool[]> sets, int i, int j)
    {
        var kept = sets.Where(set => !(set[i] && set[j])).ToList();
        foreach (var joined in sets.Where(set => set[i] && set[j]))
        {
            foreach (var left in new[] { i, j })
            {
                var part = (bool[])joined.Clone();
                part[left] = false;
                if (!kept.Exists(other => Holds(other, part)))
                {
                    kept.RemoveAll(other => Holds(part, other));
                    kept.Add(part);
                }
            }
        }

        return kept.Count <= MostSets ? kept : throw TooMany();
    }

    /// <summary>
    /// Whole letters only. Taking single means out of a letter would also be lawful, but turns runs such as
    /// a, ab, abc, bc, c into letters with gaps that nobody expects.
    /// </summary>
    private static List<bool[]> Sweep(List<bool[]> sets)
    {
        for (var index = sets.Count - 1; index >= 0; index--)
        {
            var set = sets[index];
            var others = sets.Where(other => other != set).ToList();
            var members = Enumerable.Range(0, set.Length).Where(place => set[place]).ToList();
            if (members.TrueForAll(a => members.TrueForAll(b => others.Exists(other => other[a] && other[b]))))
            {
                sets.RemoveAt(index);
            }
        }

        return sets;
    }

    private static bool Holds(bool[] larger, bool[] smaller)
    {
        for (var place = 0; place < larger.Length; place++)
        {
            if (smaller[place] && !larger[place])
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The set with the earlier mean first; among those that agree so far, the one holding the next mean.</summary>
    private static int ByFirstMeans(bool[] one, bool[] other)
    {
        for (var place = 0; place < one.Length; place++)
        {
            if (one[place] != other[place])
            {
                return one[place] ? -1 : 1;
            }
        }

        return 0;
    }

    private static NotEstimableException TooMany() =>
        new("A letter display", Sample.Text($"more than {Alphabet.Length} letters would be needed; print the table of pairs"));
}
