namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>One response with the factors and covariates of every row: what a model is fitted to.</summary>
public sealed class ModelData
{
    private readonly Dictionary<string, Factor> _factors = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Covariate> _covariates = new(StringComparer.Ordinal);

    /// <param name="response">Finite numbers, at least two. A missing plot is a row left out, never a NaN or a zero.</param>
    /// <param name="factors">Factors, each with one level a row.</param>
    /// <param name="covariates">Covariates, each with one finite number a row; none by default.</param>
    /// <exception cref="ArgumentException">A number that is not finite, columns of different lengths, or a name used twice.</exception>
    public ModelData(IReadOnlyList<double> response, IReadOnlyList<Factor> factors, IReadOnlyList<Covariate>? covariates = null)
    {
        ArgumentNullException.ThrowIfNull(response);
        ArgumentNullException.ThrowIfNull(factors);
        if (response.Count < 2)
        {
            throw new ArgumentException($"Found {response.Count} value(s) of the response; at least 2 are needed.", nameof(response));
        }

        Response = [.. response];
        RequireFinite("the response", response);
        foreach (var factor in factors)
        {
            RequireColumn(factor.Name, factor.Codes.Count);
            _factors.Add(factor.Name, factor);
        }

        foreach (var covariate in covariates ?? [])
        {
            RequireColumn(covariate.Name, covariate.Values.Count);
            RequireFinite($"covariate '{covariate.Name}'", covariate.Values);
            _covariates.Add(covariate.Name, covariate);
        }
    }

    public IReadOnlyList<double> Response { get; }

    public int Rows => Response.Count;

    public IReadOnlyCollection<Factor> Factors => _factors.Values;

    internal bool IsFactor(string name) => _factors.ContainsKey(name);

    internal Factor FactorNamed(string name) => _factors.TryGetValue(name, out var factor)
        ? factor
        : throw new ArgumentException($"Found '{name}' in a term; expected one of the factors {string.Join(", ", _factors.Keys)}.", nameof(name));

    internal Covariate CovariateNamed(string name) => _covariates.TryGetValue(name, out var covariate)
        ? covariate
        : throw new ArgumentException($"Found '{name}' in a term; expected one of {string.Join(", ", _factors.Keys.Concat(_covariates.Keys))}.", nameof(name));

    /// <summary>Numbers the observed combinations of the term's factors in order of appearance; one number a row.</summary>
    internal (int[] Groups, int Count) GroupsOf(Term term)
    {
        var factors = term.Variables.Select(FactorNamed).ToArray();
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        var groups = new int[Rows];
        for (var row = 0; row < Rows; row++)
        {
            var key = string.Join(",", factors.Select(factor => factor.Codes[row]));
            if (!seen.TryGetValue(key, out groups[row]))
            {
                groups[row] = seen.Count;
                seen.Add(key, groups[row]);
            }
        }

        return (groups, seen.Count);
    }

    internal void RequireFactorsOnly(IEnumerable<Term> terms)
    {
        foreach (var variable in terms.SelectMany(term => term.Variables))
        {
            FactorNamed(variable);
        }
    }

    private static void RequireFinite(string what, IReadOnlyList<double> values)
    {
        for (var row = 0; row < values.Count; row++)
        {
            if (!double.IsFinite(values[row]))
            {
                throw new ArgumentException($"Found {values[row]} in {what}, row {row + 1}; expected a finite number. Leave out the row of a missing plot.", nameof(values));
            }
        }
    }

    private void RequireColumn(string name, int count)
    {
        if (count != Rows)
        {
            throw new ArgumentException($"'{name}' has {count} row(s) and the response has {Rows}; expected the same.", nameof(count));
        }

        if (_factors.ContainsKey(name) || _covariates.ContainsKey(name))
        {
            throw new ArgumentException($"Found two columns named '{name}'; expected each name once.", nameof(name));
        }
    }
}
