namespace LabPipeline.Science.Colour;

/// <summary>Lagrange interpolation between measured wavelengths as ASTM E2022 prescribes: cubic inside, quadratic in the first and last interval.</summary>
internal static class LagrangeWeights
{
    /// <summary>Coefficients of the nodes around a point.</summary>
    /// <param name="point">Position on the fine grid.</param>
    /// <param name="share">Fine steps per node.</param>
    /// <param name="nodes">Number of nodes, four or more.</param>
    /// <returns>The first node used and the coefficients from it on; they sum to 1.</returns>
    public static (int First, double[] Coefficients) At(int point, int share, int nodes)
    {
        var interval = Math.Min(point / share, nodes - 2);
        var (first, count) = interval == 0 ? (0, 3) : interval == nodes - 2 ? (nodes - 3, 3) : (interval - 1, 4);
        var position = ((double)point / share) - first;
        return (first, [.. Enumerable.Range(0, count).Select(node => Coefficient(node, count, position))]);
    }

    private static double Coefficient(int node, int count, double position) => Enumerable.Range(0, count)
        .Where(other => other != node)
        .Aggregate(1.0, (product, other) => product * (position - other) / (node - other));
}
