namespace LabPipeline.Science.ControlCharts;

/// <summary>A rule that looks at the last points of a chart. Stored by <see cref="Name"/>.</summary>
/// <remarks>Points are distances from the centre line in standard errors. Inequalities are strict: a point on a line is on no side of it.</remarks>
public sealed class RunRule
{
    private readonly Func<IReadOnlyList<decimal>, bool> _fires;
    private readonly int _fewest;

    internal RunRule(string name, string definition, string source, int fewest, int points, double falseAlarmRate, Func<IReadOnlyList<decimal>, bool> fires)
    {
        Name = name;
        Definition = definition;
        Source = source;
        Points = points;
        FalseAlarmRate = falseAlarmRate;
        _fewest = fewest;
        _fires = fires;
    }

    /// <summary>Stored name; stable for ever.</summary>
    public string Name { get; }

    /// <summary>What fires it, in words.</summary>
    public string Definition { get; }

    /// <summary>Where it was published and under which label.</summary>
    public string Source { get; }

    /// <summary>How many points, the newest last, it looks at.</summary>
    public int Points { get; }

    /// <summary>Chance that it fires at a point of a process in control with normal, independent results.</summary>
    public double FalseAlarmRate { get; }

    /// <summary>Whether the rule fires at a point, looking at it and the points before.</summary>
    /// <param name="z">Points in time order.</param>
    /// <param name="index">Index of the newest point looked at.</param>
    public bool FiresAt(IReadOnlyList<decimal> z, int index)
    {
        ArgumentNullException.ThrowIfNull(z);
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, z.Count);
        var count = Math.Min(Points, index + 1);
        return count >= _fewest && _fires([.. z.Skip(index + 1 - count).Take(count)]);
    }

    public override string ToString() => Name;
}
