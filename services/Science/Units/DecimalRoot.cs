namespace LabPipeline.Science.Units;

/// <summary>Square roots that stay in decimal, so that limits derived from them can be compared exactly.</summary>
internal static class DecimalRoot
{
    /// <summary>Square root by Newton's method from the double root; correct to about 27 significant digits.</summary>
    public static decimal Sqrt(decimal value)
    {
        Require.NotNegative(value, "the square root's argument");
        if (value == 0m)
        {
            return 0m;
        }

        var root = (decimal)Math.Sqrt((double)value);
        for (var step = 0; step < 3 && root > 0m; step++)
        {
            root = (root + (value / root)) / 2m;
        }

        return root;
    }
}
