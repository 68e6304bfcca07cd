namespace LabPipeline.Science.Barcodes;

/// <summary>A text as the symbol values of a Code 128 symbol, with its check symbol.</summary>
/// <remarks>
/// Check symbol = (start value + sum of position x value) mod 103, positions from 1. Source: ISO/IEC 15417:2007. This is the arithmetic of the symbol,
/// kept apart from drawing so that a drawn label can be checked against it.
/// </remarks>
public sealed record Code128
{
    private const int Modulus = 103;

    private Code128(string text, IReadOnlyList<int> values)
    {
        Text = text;
        Values = values;
    }

    /// <summary>The text encoded.</summary>
    public string Text { get; }

    /// <summary>Start symbol and data symbols in order, without check and stop.</summary>
    public IReadOnlyList<int> Values { get; }

    /// <summary>Start value + sum of position x value.</summary>
    public int WeightedSum => Values[0] + Values.Skip(1).Select((value, index) => value * (index + 1)).Sum();

    /// <summary>Value of the check symbol, 0 to 102.</summary>
    public int Check => WeightedSum % Modulus;

    /// <summary>The whole symbol, start to stop, one character a module: 1 for bar, 0 for space, quiet zones left out.</summary>
    public string Modules => string.Concat(Values.Append(Check).Append(Code128Symbol.Stop).Select(Code128Symbol.Modules));

    /// <summary>Encodes in the fewest symbols usual: runs of four or more digits as pairs (set C), the rest in set B, or A when there are control characters.</summary>
    /// <exception cref="ArgumentException">The text is empty, holds a character outside ASCII, or both control characters and lower case.</exception>
    public static Code128 Encode(string text)
    {
        RequireText(text);
        var letters = text.Any(char.IsControl) ? Code128Set.A : Code128Set.B;
        var values = new List<int>();
        Code128Set? current = null;
        for (var position = 0; position < text.Length;)
        {
            var run = DigitRun(text, position);
            var pairs = run >= 4 || (run == 2 && text.Length == 2);
            // An odd run gives its first digit to the letters, unless the symbol can start in set C.
            var wanted = pairs && (run % 2 == 0 || position == 0) ? Code128Set.C : letters;
            if (current == Code128Set.C && run >= 2)
            {
                wanted = Code128Set.C;
            }

            SwitchTo(wanted, ref current, values);
            position += Append(text, position, wanted, values);
        }

        return new Code128(text, values);
    }

    /// <summary>Encodes the whole text in one code set.</summary>
    /// <exception cref="ArgumentException">The text is empty, holds a character the set has not, or an odd number of digits for set C.</exception>
    public static Code128 Encode(string text, Code128Set set)
    {
        RequireText(text);
        Code128Set? current = null;
        var values = new List<int>();
        SwitchTo(set, ref current, values);
        for (var position = 0; position < text.Length;)
        {
            position += Append(text, position, set, values);
        }

        return new Code128(text, values);
    }

    private static void RequireText(string text) => ArgumentException.ThrowIfNullOrEmpty(text);

    private static int DigitRun(string text, int start)
    {
        var end = start;
        while (end < text.Length && char.IsAsciiDigit(text[end]))
        {
            end++;
        }

        return end - start;
    }

    private static void SwitchTo(Code128Set wanted, ref Code128Set? current, List<int> values)
    {
        if (current == wanted)
        {
            return;
        }

        values.Add((current, wanted) switch
        {
            (null, Code128Set.A) => Code128Symbol.StartA,
            (null, Code128Set.B) => Code128Symbol.StartB,
            (null, _) => Code128Symbol.StartC,
            (_, Code128Set.A) => Code128Symbol.CodeA,
            (_, Code128Set.B) => Code128Symbol.CodeB,
            _ => Code128Symbol.CodeC,
        });
        current = wanted;
    }

    private static int Append(string text, int position, Code128Set set, List<int> values)
    {
        var character = text[position];
        switch (set)
        {
            case Code128Set.C when position + 1 < text.Length && char.IsAsciiDigit(character) && char.IsAsciiDigit(text[position + 1]):
                values.Add(((character - '0') * 10) + text[position + 1] - '0');
                return 2;
            case Code128Set.A when character < 32:
                values.Add(character + 64);
                return 1;
            case Code128Set.A when character < 96:
            case Code128Set.B when character is >= ' ' and <= (char)127:
                values.Add(character - 32);
                return 1;
            default:
                throw new ArgumentException(
                    $"Found '{character}' at position {position + 1} of '{text}', expected a text that code set {set} of Code 128 can hold.", nameof(text));
        }
    }
}
