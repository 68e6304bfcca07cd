namespace LabPipeline.Intake.Text;

/// <summary>One declared way of writing a date and time; reads a text completely or not at all.</summary>
/// <remarks>
/// yyyy MM dd HH mm ss: digits of exactly that many places. M d H: one or two digits. ".f" or ",f": a fraction of 1 to 7 digits that may
/// be left out. Z: the letter Z, meaning UTC. zzz: Z, or an offset such as +01:00 or +0100. Separators - / . : , _ T and blank stand for
/// themselves. Year, month, day, hour and minute are required: anything less would be completed by a guess.
/// </remarks>
public sealed class TimestampPattern
{
    private const string Separators = "-/.:,_ T";
    private const int MaxFractionDigits = 7;

    private readonly PatternPart[] _parts;

    private TimestampPattern(string text, PatternPart[] parts)
    {
        Text = text;
        _parts = parts;
    }

    public string Text { get; }

    /// <summary>Whether the text itself names the offset, so that no zone is needed.</summary>
    public bool StatesOffset => Array.Exists(_parts, part => part.Field is PatternField.Zulu or PatternField.Offset);

    /// <summary>The pattern, or null with the reason it is none.</summary>
    public static TimestampPattern? Compile(string text, out string? fault)
    {
        var parts = new List<PatternPart>();
        for (var index = 0; index < text.Length;)
        {
            var part = PartAt(text, index, out var length);
            if (part is null)
            {
                fault = $"'{text[index..Math.Min(text.Length, index + 4)]}' at position {index + 1} is no part of a pattern";
                return null;
            }

            parts.Add(part.Value);
            index += length;
        }

        fault = Incomplete(parts);
        return fault is null ? new TimestampPattern(text, [.. parts]) : null;
    }

    internal bool TryRead(ReadOnlySpan<char> text, out LocalFields fields)
    {
        fields = default;
        var position = 0;
        foreach (ref readonly var part in _parts.AsSpan())
        {
            if (!ReadPart(in part, text, ref position, ref fields))
            {
                return false;
            }
        }

        return position == text.Length;
    }

    private static PatternPart? PartAt(string text, int index, out int length)
    {
        var symbol = text[index];
        length = 1;
        if (symbol is '.' or ',' && index + 1 < text.Length && text[index + 1] == 'f')
        {
            length = 2;
            return new PatternPart(PatternField.Fraction, 0, 0, symbol);
        }

        if (Separators.Contains(symbol, StringComparison.Ordinal))
        {
            return new PatternPart(PatternField.Literal, 1, 1, symbol);
        }

        while (index + length < text.Length && text[index + length] == symbol)
        {
            length++;
        }

        return (symbol, length) switch
        {
            ('y', 4) => new PatternPart(PatternField.Year, 4, 4, symbol),
            ('M', 1 or 2) => new PatternPart(PatternField.Month, length, 2, symbol),
            ('d', 1 or 2) => new PatternPart(PatternField.Day, length, 2, symbol),
            ('H', 1 or 2) => new PatternPart(PatternField.Hour, length, 2, symbol),
            ('m', 2) => new PatternPart(PatternField.Minute, 2, 2, symbol),
            ('s', 2) => new PatternPart(PatternField.Second, 2, 2, symbol),
            ('Z', 1) => new PatternPart(PatternField.Zulu, 1, 1, symbol),
            ('z', 3) => new PatternPart(PatternField.Offset, 1, 6, symbol),
            _ => null,
        };
    }

    private static string? Incomplete(List<PatternPart> parts)
    {
        foreach (var field in Enum.GetValues<PatternField>())
        {
            var times = parts.Count(part => part.Field == field);
            if (field != PatternField.Literal && times > 1)
            {
                return $"the {field.ToString().ToLowerInvariant()} stands in it twice";
            }

            if (times == 0 && field is (PatternField.Year or PatternField.Month or PatternField.Day or PatternField.Hour or PatternField.Minute))
            {
                return $"the {field.ToString().ToLowerInvariant()} is missing";
            }
        }

        return null;
    }

    private static bool ReadPart(in PatternPart part, ReadOnlySpan<char> text, ref int position, ref LocalFields fields)
    {
        switch (part.Field)
        {
            case PatternField.Literal:
                return Take(text, ref position, part.Symbol);
            case PatternField.Zulu:
                fields.HasOffset = true;
                return Take(text, ref position, 'Z');
            case PatternField.Offset:
                return ReadOffset(text, ref position, ref fields);
            case PatternField.Fraction:
                return ReadFraction(text, ref position, part.Symbol, ref fields);
            default:
                return ReadNumber(text, ref position, part.Least, part.Most, out fields.Of(part.Field));
        }
    }

    private static bool Take(ReadOnlySpan<char> text, ref int position, char symbol)
    {
        if (position >= text.Length || text[position] != symbol)
        {
            return false;
        }

        position++;
        return true;
    }

    private static bool ReadNumber(ReadOnlySpan<char> text, ref int position, int least, int most, out int number)
    {
        number = 0;
        var start = position;
        while (position < text.Length && position - start < most && text[position] is >= '0' and <= '9')
        {
            number = (number * 10) + (text[position++] - '0');
        }

        return position - start >= least;
    }

    private static bool ReadFraction(ReadOnlySpan<char> text, ref int position, char mark, ref LocalFields fields)
    {
        if (!Take(text, ref position, mark))
        {
            return true;
        }

        var start = position;
        if (!ReadNumber(text, ref position, 1, MaxFractionDigits, out var ticks))
        {
            return false;
        }

        for (var digits = position - start; digits < MaxFractionDigits; digits++)
        {
            ticks *= 10;
        }

        fields.Of(PatternField.Fraction) = ticks;
        return true;
    }

    private static bool ReadOffset(ReadOnlySpan<char> text, ref int position, ref LocalFields fields)
    {
        if (Take(text, ref position, 'Z'))
        {
            fields.HasOffset = true;
            return true;
        }

        var west = Take(text, ref position, '-');
        if (!west && !Take(text, ref position, '+'))
        {
            return false;
        }

        if (!ReadNumber(text, ref position, 2, 2, out var hours))
        {
            return false;
        }

        Take(text, ref position, ':');
        if (!ReadNumber(text, ref position, 2, 2, out var minutes) || minutes > 59)
        {
            return false;
        }

        fields.HasOffset = true;
        fields.Of(PatternField.Offset) = ((hours * 60) + minutes) * (west ? -1 : 1);
        return true;
    }
}
