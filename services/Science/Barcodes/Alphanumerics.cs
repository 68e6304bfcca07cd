namespace LabPipeline.Science.Barcodes;

/// <summary>The character values of ISO/IEC 7064: 0-9 are 0 to 9, A-Z are 10 to 35, * is 36 (check character of MOD 37-2 only).</summary>
internal static class Alphanumerics
{
    private const string Characters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";

    public static char At(int value) => Characters[value];

    /// <summary>Value of a character, or -1 when it is none of the first <paramref name="size"/>.</summary>
    public static int ValueOf(char character, int size)
    {
        var value = character switch
        {
            >= '0' and <= '9' => character - '0',
            >= 'A' and <= 'Z' => character - 'A' + 10,
            '*' => 36,
            _ => -1,
        };
        return value < size ? value : -1;
    }

    /// <summary>Values of every character of a payload.</summary>
    /// <exception cref="ArgumentException">The payload is empty or holds a character outside the first <paramref name="size"/>.</exception>
    public static int[] ValuesOf(string payload, int size, string expected)
    {
        ArgumentNullException.ThrowIfNull(payload);
        if (payload.Length == 0)
        {
            throw new ArgumentException($"Found an empty payload, expected {expected}.", nameof(payload));
        }

        var values = new int[payload.Length];
        for (var position = 0; position < payload.Length; position++)
        {
            values[position] = ValueOf(payload[position], size);
            if (values[position] < 0)
            {
                throw new ArgumentException($"Found '{payload[position]}' at position {position + 1} of '{payload}', expected {expected}.", nameof(payload));
            }
        }

        return values;
    }
}
