namespace LabPipeline.Science.Order;

/// <summary>Holds the order in which samples were reported against the planned one and names what it sees.</summary>
/// <remarks>
/// Explanations are tried from the largest to the smallest, each sample being explained once: the whole rack shifted (a round sample changer
/// that began one place off included), a tray rotated, a stretch shifted, two samples exchanged, single samples misplaced. A pattern needs
/// three samples: two can be in each other's place without any. Only what was scanned can be told: a worklist typed into an
/// instrument reports the planned order whatever stands in its rack. Method: ours, common practice of rack scans, no source.
/// </remarks>
public static class OrderComparison
{
    private const int FewestOfAPattern = 3;

    /// <summary>Compares the two orders.</summary>
    /// <param name="planned">Samples in planned order, each once.</param>
    /// <param name="reported">Samples in the order or at the places reported; null for an empty place. Blanks and control checks are left out in both.</param>
    /// <param name="trayPlaces">Places of a tray or rack, 1 or more; null when the whole order stands on one.</param>
    /// <exception cref="ArgumentException">A planned sample is listed twice.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A tray has no place.</exception>
    public static OrderVerdict Compare(IReadOnlyList<string> planned, IReadOnlyList<string?> reported, int? trayPlaces = null)
    {
        ArgumentNullException.ThrowIfNull(planned);
        ArgumentNullException.ThrowIfNull(reported);
        ArgumentOutOfRangeException.ThrowIfLessThan(trayPlaces ?? 1, 1);
        var places = PlacesOf(planned);
        var findings = new List<OrderFinding>();
        var open = Place(places, planned, reported, findings);
        var missing = planned.Except(open.Select(sample => sample.Label), StringComparer.Ordinal).ToList();
        if (open.Any(sample => sample.By != 0) && !ExplainWhole(open, planned, findings))
        {
            ExplainTrays(open, planned, trayPlaces ?? planned.Count, findings);
            ExplainStretches(open, planned, findings);
            ExplainPairs(open, planned, findings);
            findings.AddRange(open.Where(sample => sample.By != 0).Select(sample => Finding(OrderPattern.Misplaced, [sample], planned)));
        }

        return new OrderVerdict([.. findings.OrderBy(finding => finding.FirstPlace)], missing);
    }

    /// <summary>The order of samples in rows that may hold several readings of each: readings of one sample that follow each other count once.</summary>
    public static IReadOnlyList<string> InSequence(IEnumerable<string> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        var order = new List<string>();
        foreach (var label in readings.Where(label => order.Count == 0 || order[^1] != label))
        {
            order.Add(label);
        }

        return order;
    }

    private static Dictionary<string, int> PlacesOf(IReadOnlyList<string> planned)
    {
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var label in planned)
        {
            if (!places.TryAdd(label, places.Count + 1))
            {
                throw new ArgumentException($"Found '{label}' twice in the planned order, expected every sample once.", nameof(planned));
            }
        }

        return places;
    }

    private static List<PlacedSample> Place(
        Dictionary<string, int> places, IReadOnlyList<string> planned, IReadOnlyList<string?> reported, List<OrderFinding> findings)
    {
        var placed = new Dictionary<string, PlacedSample>(StringComparer.Ordinal);
        foreach (var (label, place) in reported.Select((label, index) => (label, index + 1)))
        {
            if (label is null)
            {
                continue;
            }

            if (!places.TryGetValue(label, out var plannedPlace))
            {
                findings.Add(new OrderFinding(OrderPattern.Foreign, place, place, 0, label, At(planned, place)));
            }
            else if (!placed.TryAdd(label, new PlacedSample(label, place, plannedPlace)))
            {
                findings.Add(new OrderFinding(OrderPattern.Repeated, place, place, 0, label, At(planned, place)));
            }
        }

        return [.. placed.Values.OrderBy(sample => sample.Place)];
    }

    /// <summary>One displacement for all, places counted round the end of the order.</summary>
    private static bool ExplainWhole(List<PlacedSample> open, IReadOnlyList<string> planned, List<OrderFinding> findings)
    {
        var turns = open.Select(sample => ((sample.By % planned.Count) + planned.Count) % planned.Count).Distinct().ToList();
        if (open.Count < FewestOfAPattern || planned.Count <= FewestOfAPattern || turns.Count != 1 || turns[0] == 0)
        {
            return false;
        }

        // Shown is a sample that did not go round the end.
        var by = open.CountBy(sample => sample.By).MaxBy(pair => pair.Value).Key;
        findings.Add(Finding(OrderPattern.Shifted, [open.First(sample => sample.By == by), open[^1]], planned));
        return true;
    }

    private static void ExplainTrays(List<PlacedSample> open, IReadOnlyList<string> planned, int trayPlaces, List<OrderFinding> findings)
    {
        foreach (var tray in open.GroupBy(sample => (sample.PlannedPlace - 1) / trayPlaces).Select(group => group.ToList()).ToList())
        {
            var isMirrored = tray.Select(sample => sample.Place + sample.PlannedPlace).Distinct().Count() == 1;
            if (tray.Count >= FewestOfAPattern && isMirrored)
            {
                Close(OrderPattern.TrayRotated, tray, open, planned, findings);
            }
        }
    }

    private static void ExplainStretches(List<PlacedSample> open, IReadOnlyList<string> planned, List<OrderFinding> findings)
    {
        var stretches = new List<List<PlacedSample>>();
        foreach (var sample in open)
        {
            if (stretches.Count == 0 || stretches[^1][0].By != sample.By)
            {
                stretches.Add([]);
            }

            stretches[^1].Add(sample);
        }

        foreach (var stretch in stretches.Where(stretch => stretch.Count >= FewestOfAPattern && stretch[0].By != 0))
        {
            Close(OrderPattern.Shifted, stretch, open, planned, findings);
        }
    }

    private static void ExplainPairs(List<PlacedSample> open, IReadOnlyList<string> planned, List<OrderFinding> findings)
    {
        var byPlace = open.ToDictionary(sample => sample.Place);
        foreach (var sample in open.Where(sample => sample.By < 0).ToList())
        {
            if (byPlace.TryGetValue(sample.PlannedPlace, out var other) && other.PlannedPlace == sample.Place)
            {
                var pattern = sample.By == -1 ? OrderPattern.NeighboursSwapped : OrderPattern.Exchanged;
                Close(pattern, [sample, other], open, planned, findings);
            }
        }
    }

    private static void Close(
        OrderPattern pattern, IReadOnlyList<PlacedSample> explained, List<PlacedSample> open, IReadOnlyList<string> planned, List<OrderFinding> findings)
    {
        findings.Add(Finding(pattern, explained, planned));
        open.RemoveAll(explained.Contains);
    }

    private static OrderFinding Finding(OrderPattern pattern, IReadOnlyList<PlacedSample> explained, IReadOnlyList<string> planned) =>
        new(pattern, explained[0].Place, explained[^1].Place, explained[0].By, explained[0].Label, At(planned, explained[0].Place));

    private static string? At(IReadOnlyList<string> planned, int place) => place <= planned.Count ? planned[place - 1] : null;
}
