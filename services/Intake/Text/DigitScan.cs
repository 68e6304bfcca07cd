namespace LabPipeline.Intake.Text;

/// <summary>Walks over a number's characters and gathers its digits; reads '\0' past the end.</summary>
internal ref struct DigitScan(ReadOnlySpan<char> text, int position)
{
    private const int ExponentDigits = 3;

    private readonly ReadOnlySpan<char> _text = text;
    private int _position = position;

    public ulong Mantissa { get; private set; }

    public int Significant { get; private set; }

    public readonly bool AtEnd => _position == _text.Length;

    public readonly char Current => _position < _text.Length ? _text[_position] : '\0';

    public readonly bool AtExponent => Current is 'E' or 'e';

    public bool Take(char symbol)
    {
        if (AtEnd || _text[_position] != symbol)
        {
            return false;
        }

        _position++;
        return true;
    }

    /// <summary>Takes digits as long as there are any and says how many they were.</summary>
    public int Digits()
    {
        var start = _position;
        while (_position < _text.Length && _text[_position] is >= '0' and <= '9')
        {
            var digit = (uint)(_text[_position++] - '0');
            if (Mantissa == 0 && digit == 0)
            {
                continue;
            }

            // Digits past the limit are only counted: the number is refused, so its mantissa no longer matters.
            if (++Significant <= NumberGrammar.MaxSignificantDigits)
            {
                Mantissa = (Mantissa * 10) + digit;
            }
        }

        return _position - start;
    }

    /// <summary>The exponent with its sign, or null when there is none or it is too long to mean anything.</summary>
    public int? Exponent()
    {
        _position++;
        var negative = Current == '-';
        if (negative || Current == '+')
        {
            _position++;
        }

        var start = _position;
        var exponent = 0;
        while (_position < _text.Length && _position - start < ExponentDigits && _text[_position] is >= '0' and <= '9')
        {
            exponent = (exponent * 10) + (_text[_position++] - '0');
        }

        return _position == start ? null : negative ? -exponent : exponent;
    }
}
