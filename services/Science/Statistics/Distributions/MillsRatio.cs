namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>
/// Mills' ratio R(x) = upper tail / density of the standard normal, for x at or above 0, by short Taylor series
/// about a grid. R obeys R' = x R - 1, which gives every Taylor coefficient from the value alone.
/// </summary>
internal static class MillsRatio
{
    private const int PerUnit = 8;
    private const int TableEnd = 10;
    private const int Order = 12;

    /// <summary>Terms of the continued fraction; at x = 10 it is exact to double precision well before these.</summary>
    private const int FractionTerms = 60;

    private static readonly double[][] Taylor = BuildTable();

    internal static double Of(double x)
    {
        if (x >= TableEnd)
        {
            return Fraction(x);
        }

        var row = (int)((x * PerUnit) + 0.5);
        return Evaluate(Taylor[row], x - ((double)row / PerUnit));
    }

    /// <summary>Laplace's fraction 1/(x+1/(x+2/(x+3/...))), from the inside out.</summary>
    private static double Fraction(double x)
    {
        var tail = x;
        for (var n = FractionTerms; n >= 1; n--)
        {
            tail = x + (n / tail);
        }

        return 1 / tail;
    }

    /// <summary>From the far end inward: in that direction an error shrinks with the solution e^(x²/2) of the homogeneous equation.</summary>
    private static double[][] BuildTable()
    {
        var rows = new double[(TableEnd * PerUnit) + 1][];
        var value = Fraction(TableEnd);
        for (var row = rows.Length - 1; row >= 0; row--)
        {
            var x = (double)row / PerUnit;
            rows[row] = Coefficients(x, value, Order);
            value = Evaluate(Coefficients(x, value, 2 * Order), -1.0 / PerUnit);
        }

        return rows;
    }

    private static double[] Coefficients(double x, double value, int order)
    {
        var c = new double[order + 1];
        c[0] = value;
        c[1] = (x * value) - 1;
        for (var n = 1; n < order; n++)
        {
            c[n + 1] = ((x * c[n]) + c[n - 1]) / (n + 1);
        }

        return c;
    }

    private static double Evaluate(double[] coefficients, double step)
    {
        var sum = 0.0;
        for (var n = coefficients.Length - 1; n >= 0; n--)
        {
            sum = (sum * step) + coefficients[n];
        }

        return sum;
    }
}
