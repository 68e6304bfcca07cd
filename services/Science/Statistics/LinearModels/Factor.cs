namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>A qualitative explanatory variable: a name, its levels in stated order, and the level of every row.</summary>
public sealed class Factor
{
    private readonly int[] _codes;

    private Factor(string name, IReadOnlyList<string> levels, int[] codes)
    {
        Name = name;
        Levels = levels;
        _codes = codes;
    }

    public string Name { get; }

    /// <summary>Levels in the order in which they are reported; at least two.</summary>
    public IReadOnlyList<string> Levels { get; }

    /// <summary>Position in <see cref="Levels"/> of each row's level.</summary>
    public IReadOnlyList<int> Codes => _codes;

    /// <summary>A factor with levels in a stated order.</summary>
    /// <param name="name">How terms refer to it; not blank, no colon (the colon joins the factors of an interaction).</param>
    /// <param name="levels">At least two different levels.</param>
    /// <param name="values">The level of each row.</param>
    /// <exception cref="ArgumentException">One level only, a repeated level, or a row whose level is not in the list.</exception>
    public static Factor Of(string name, IReadOnlyList<string> levels, IReadOnlyList<string> values)
    {
        ArgumentNullException.ThrowIfNull(levels);
        ArgumentNullException.ThrowIfNull(values);
        if (string.IsNullOrWhiteSpace(name) || name.Contains(':', StringComparison.Ordinal))
        {
            throw new ArgumentException($"Found factor name '{name}'; expected a name that is not blank and holds no colon.", nameof(name));
        }

        if (levels.Count < 2)
        {
            throw new ArgumentException($"Factor '{name}' has {levels.Count} level(s) ({string.Join(", ", levels)}); at least 2 are needed to compare anything.", nameof(levels));
        }

        var index = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var level in levels)
        {
            if (!index.TryAdd(level, index.Count))
            {
                throw new ArgumentException($"Factor '{name}' names level '{level}' twice; expected each level once.", nameof(levels));
            }
        }

        var codes = values.Select((value, row) => index.TryGetValue(value, out var code)
            ? code
            : throw new ArgumentException($"Factor '{name}', row {row + 1}: found level '{value}'; expected one of {string.Join(", ", levels)}.", nameof(values)));
        return new Factor(name, [.. levels], [.. codes]);
    }

    /// <summary>A factor whose levels are reported in the order in which they first appear.</summary>
    /// <exception cref="ArgumentException">As for <see cref="Of"/>.</exception>
    public static Factor InOrderOfAppearance(string name, IReadOnlyList<string> values) =>
        Of(name, [.. values.Distinct(StringComparer.Ordinal)], values);
}
