namespace LabPipeline.Intake.Reading;

/// <summary>Reads a sample barcode from a cell without blanks around it.</summary>
internal static class BarcodeCell
{
    private const int Shortest = 4;
    private const int Longest = 24;
    private const int M = 36;

    /// <summary>The barcode in upper case, or null; then the check character that would fit, or '\0' when it is no barcode at all.</summary>
    public static string? Read(ReadOnlySpan<char> text, out char expected)
    {
        expected = '\0';
        if (text.Length is < Shortest or > Longest)
        {
            return null;
        }

        Span<char> upper = stackalloc char[Longest];
        upper = upper[..text.Length];
        var product = M;
        for (var index = 0; index < text.Length; index++)
        {
            var symbol = text[index];
            symbol = symbol is >= 'a' and <= 'z' ? (char)(symbol - 'a' + 'A') : symbol;
            var value = symbol is >= '0' and <= '9' ? symbol - '0' : symbol is >= 'A' and <= 'Z' ? symbol - 'A' + 10 : -1;
            var isPayload = index < text.Length - 1;
            if (value < 0 || (isPayload && symbol is ('I' or 'O' or 'Q')))
            {
                return null;
            }

            upper[index] = symbol;
            if (isPayload)
            {
                var sum = product + value;
                sum = sum > M ? sum - M : sum;
                product = 2 * sum;
                product = product > M ? product - M - 1 : product;
            }
        }

        var check = (M + 1 - product) % M;
        expected = (char)(check < 10 ? '0' + check : 'A' + check - 10);
        return expected == upper[^1] ? upper.ToString() : null;
    }
}
