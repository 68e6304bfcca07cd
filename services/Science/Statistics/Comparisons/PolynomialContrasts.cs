namespace LabPipeline.Science.Statistics.Comparisons;

/// <summary>Trend contrasts over a quantitative factor with any spacing: linear, quadratic, cubic and so on.</summary>
/// <remarks>
/// The coefficients are values at the levels of polynomials that are orthogonal over those levels, made by the three-term
/// recurrence on centred and scaled levels and orthogonalised again; squares add to 1, the sign is that of a
/// positive leading coefficient. Equal numbers of plots at the levels are assumed.
/// </remarks>
public static class PolynomialContrasts
{
    private static readonly string[] Names = ["linear", "quadratic", "cubic", "quartic", "quintic"];

    /// <param name="levels">At least two different finite levels, in the order of the means; any order, any spacing.</param>
    /// <param name="highestDegree">1 to the number of levels less 1.</param>
    /// <exception cref="ArgumentException">Too few levels, equal levels, one that is not finite, or a degree outside its range.</exception>
    public static IReadOnlyList<Contrast> Of(IReadOnlyList<double> levels, int highestDegree)
    {
        Sample.Check(levels, 2, "The list of levels");
        if (levels.Distinct().Count() != levels.Count)
        {
            throw new ArgumentException("Two levels are equal; every mean needs its own level.", nameof(levels));
        }

        if (highestDegree < 1 || highestDegree >= levels.Count)
        {
            throw new ArgumentOutOfRangeException(nameof(highestDegree), Sample.Text($"The degree must be from 1 to {levels.Count - 1} for {levels.Count} levels; found {highestDegree}."));
        }

        var centre = Moments.Of(levels).Mean;
        var reach = levels.Max(level => Math.Abs(level - centre));
        double[] x = [.. levels.Select(level => (level - centre) / reach)];
        List<double[]> basis = [[.. Enumerable.Repeat(1 / Math.Sqrt(x.Length), x.Length)]];
        while (basis.Count <= highestDegree)
        {
            basis.Add(Next(x, basis));
        }

        return [.. basis.Skip(1).Select((values, index) => new Contrast(Name(index + 1), values))];
    }

    /// <summary>x times the last polynomial has a positive leading coefficient; taking out all earlier ones does not change it.</summary>
    private static double[] Next(double[] x, List<double[]> basis)
    {
        double[] next = [.. x.Zip(basis[^1], (level, value) => level * value)];
        for (var pass = 0; pass < 2; pass++)
        {
            foreach (var earlier in basis)
            {
                var along = next.Zip(earlier, (a, b) => a * b).Sum();
                next = [.. next.Zip(earlier, (a, b) => a - (along * b))];
            }
        }

        var length = Math.Sqrt(next.Sum(value => value * value));
        return [.. next.Select(value => value / length)];
    }

    private static string Name(int degree) => degree <= Names.Length ? Names[degree - 1] : Sample.Text($"degree {degree}");
}
