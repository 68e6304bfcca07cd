namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>One line of a model: a main effect ("rate") or an interaction ("clone:rate"). Two terms with one name are equal.</summary>
public sealed class Term : IEquatable<Term>
{
    private Term(IReadOnlyList<string> variables) => Variables = variables;

    /// <summary>The variables whose product the term is, in the order written.</summary>
    public IReadOnlyList<string> Variables { get; }

    /// <summary>The variables joined by a colon.</summary>
    public string Name => string.Join(":", Variables);

    /// <param name="variables">At least one name, each once.</param>
    /// <exception cref="ArgumentException">No name, or one name twice.</exception>
    public static Term Of(params IReadOnlyList<string> variables)
    {
        ArgumentNullException.ThrowIfNull(variables);
        return variables.Count > 0 && variables.Distinct(StringComparer.Ordinal).Count() == variables.Count
            ? new Term([.. variables])
            : throw new ArgumentException($"Found a term of '{string.Join(":", variables)}'; expected at least one variable, each once.", nameof(variables));
    }

    /// <summary>All main effects and interactions of the factors, main effects first: A, B, C, A:B, A:C, B:C, A:B:C.</summary>
    public static IReadOnlyList<Term> Factorial(params IReadOnlyList<string> factors)
    {
        ArgumentNullException.ThrowIfNull(factors);
        var sets = Enumerable.Range(1, (1 << factors.Count) - 1)
            .Select(mask => Enumerable.Range(0, factors.Count).Where(bit => (mask & (1 << bit)) != 0).ToArray());
        return [.. sets.OrderBy(set => set.Length)
            .ThenBy(set => string.Join(",", set.Select(bit => (char)('a' + bit))), StringComparer.Ordinal)
            .Select(set => Of([.. set.Select(bit => factors[bit])]))];
    }

    /// <summary>Whether every variable of the other term is in this one ("A:B" contains "A" and itself).</summary>
    public bool Contains(Term other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return other.Variables.All(Variables.Contains);
    }

    public bool Equals(Term? other) => other is not null && Name == other.Name;

    public override bool Equals(object? obj) => Equals(obj as Term);

    public override int GetHashCode() => Name.GetHashCode(StringComparison.Ordinal);

    public override string ToString() => Name;
}
