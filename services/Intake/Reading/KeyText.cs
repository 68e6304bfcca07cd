using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Reading;

/// <summary>Joins the parts of a row key with |; a | or \ within a part is escaped, so that different parts never make the same key.</summary>
internal sealed class KeyText
{
    private char[] _text = new char[256];
    private int _length;
    private bool _first = true;

    public void Clear()
    {
        _length = 0;
        _first = true;
    }

    public void Add(ReadOnlySpan<char> part)
    {
        Reserve((part.Length * 2) + 1);
        if (!_first)
        {
            _text[_length++] = '|';
        }

        _first = false;
        if (part.IndexOfAny('|', '\\') < 0)
        {
            part.CopyTo(_text.AsSpan(_length));
            _length += part.Length;
            return;
        }

        foreach (var symbol in part)
        {
            if (symbol is '|' or '\\')
            {
                _text[_length++] = '\\';
            }

            _text[_length++] = symbol;
        }
    }

    public void Add(int? part)
    {
        Span<char> digits = stackalloc char[11];
        var length = 0;
        if (part is { } number)
        {
            number.TryFormat(digits, out length, default, System.Globalization.CultureInfo.InvariantCulture);
        }

        Add(digits[..length]);
    }

    /// <summary>The key, valid until <see cref="Clear"/>.</summary>
    public PassingText Build() => new(_text.AsMemory(0, _length));

    private void Reserve(int more)
    {
        if (_length + more > _text.Length)
        {
            Array.Resize(ref _text, Math.Max(_text.Length * 2, _length + more));
        }
    }
}
