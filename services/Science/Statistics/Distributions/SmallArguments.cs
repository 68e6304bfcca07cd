namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>Logarithm and exponential near their zeros, where the plain forms lose digits (the base library's LogP1 and ExpM1 are the plain forms).</summary>
internal static class SmallArguments
{
    /// <summary>ln(1 + x) to full relative accuracy for x above -1 (Kahan's quotient).</summary>
    internal static double Log1p(double x)
    {
        var sum = 1 + x;
        return sum == 1 ? x : double.IsInfinity(sum) || sum == 0 ? Math.Log(sum) : Math.Log(sum) * (x / (sum - 1));
    }

    /// <summary>exp(x) - 1 to full relative accuracy (Kahan's quotient).</summary>
    internal static double Expm1(double x)
    {
        var power = Math.Exp(x);
        if (power == 1)
        {
            return x;
        }

        var less = power - 1;
        return less == -1 || double.IsInfinity(power) ? less : less * (x / Math.Log(power));
    }

    /// <summary>
    /// u - ln(1 + u) with 1 + u = value / centre, never negative. Near the centre, with r = u / (2 + u), the logarithm
    /// is 2 artanh r, which leaves u r - 2 r^3 (1/3 + r^2/5 + ...): no difference of nearly equal numbers.
    /// </summary>
    /// <param name="value">At or above 0.</param>
    /// <param name="centre">Above 0.</param>
    /// <param name="away">value - centre, which the caller may know more exactly than the difference.</param>
    internal static double LogDeviance(double value, double centre, double away)
    {
        var u = away / centre;
        if (Math.Abs(u) > 0.5)
        {
            return u - Math.Log(value / centre);
        }

        var ratio = u / (2 + u);
        var square = ratio * ratio;
        var tail = 0.0;
        for (var odd = 31; odd >= 3; odd -= 2)
        {
            tail = (1.0 / odd) + (square * tail);
        }

        return ratio * (u - (2 * square * tail));
    }
}
