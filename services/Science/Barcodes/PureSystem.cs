namespace LabPipeline.Science.Barcodes;

/// <summary>ISO/IEC 7064 pure system of modulus M and radix 2 with one check character: the sum of value x 2^position is 1 modulo M.</summary>
internal static class PureSystem
{
    /// <summary>Value of the check character, 0 to modulus - 1.</summary>
    public static int Check(IEnumerable<int> values, int modulus)
    {
        var sum = values.Aggregate(0, (total, value) => (total + value) * 2 % modulus);
        return (modulus + 1 - sum) % modulus;
    }
}
