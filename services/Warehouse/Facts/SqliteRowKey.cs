namespace LabPipeline.Warehouse.Facts;

/// <summary>SQLite keeps a row key that is a plain whole number as a number: it is shorter, and a file's numbers, rising, go to the end of the index.</summary>
/// <remarks>As texts they would not: "100000" stands between "10000" and "10001". Readers of the warehouse see text again, by a cast that gives back the same one.</remarks>
internal static class SqliteRowKey
{
    private const int MostDigits = 18;

    /// <summary>The number whose only way of writing is <paramref name="key"/>.</summary>
    public static bool TryNumber(ReadOnlySpan<char> key, out long number)
    {
        number = 0;
        if (key.Length is 0 or > MostDigits || (key[0] == '0' && key.Length > 1))
        {
            return false;
        }

        foreach (var symbol in key)
        {
            if (symbol is < '0' or > '9')
            {
                return false;
            }

            number = (number * 10) + (symbol - '0');
        }

        return true;
    }
}
