namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>Products of probabilities carried by their complements, so that 1 - product keeps its digits when it is small.</summary>
internal static class Complement
{
    /// <summary>1 - (1 - a)(1 - b).</summary>
    internal static double OfBoth(double a, double b) => a + (b * (1 - a));

    /// <summary>1 - (1 - c)^n by repeated squaring.</summary>
    internal static double OfPower(double c, int n)
    {
        var result = 0.0;
        for (; n > 0; n >>= 1)
        {
            if ((n & 1) == 1)
            {
                result = OfBoth(result, c);
            }

            c = OfBoth(c, c);
        }

        return result;
    }

    /// <summary>x^n by repeated squaring.</summary>
    internal static double Power(double x, int n)
    {
        var result = 1.0;
        for (; n > 0; n >>= 1)
        {
            if ((n & 1) == 1)
            {
                result *= x;
            }

            x *= x;
        }

        return result;
    }
}
