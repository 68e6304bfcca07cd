using System.Buffers;
using System.Text;
using SQLitePCL;

namespace LabPipeline.Warehouse.Facts;

/// <summary>The places of one prepared statement: texts are bound without a copy on the heap, and nothing is bound that its place still holds.</summary>
/// <remarks>Bindings outlive a reset, most columns repeat from row to row, and readers hand out the same string for the same run, unit or operator.</remarks>
internal sealed class SqlitePlaces(sqlite3_stmt statement, int places)
{
    private const int OnStack = 512;

    // What no text and no number is: the place was never bound.
    private static readonly object Nothing = new();

    private readonly object?[] _texts = [.. Enumerable.Repeat(Nothing, places + 1)];
    private readonly long?[] _numbers = new long?[places + 1];
    private readonly bool[] _numberBound = new bool[places + 1];

    public void Bind(int at, string? text)
    {
        if (ReferenceEquals(_texts[at], text))
        {
            return;
        }

        _texts[at] = text;
        if (text is null)
        {
            raw.sqlite3_bind_null(statement, at);
            return;
        }

        var longest = Encoding.UTF8.GetMaxByteCount(text.Length);
        var rented = longest > OnStack ? ArrayPool<byte>.Shared.Rent(longest) : null;
        var buffer = rented ?? stackalloc byte[OnStack];
        raw.sqlite3_bind_text(statement, at, buffer[..Encoding.UTF8.GetBytes(text, buffer)]);
        if (rented is not null)
        {
            ArrayPool<byte>.Shared.Return(rented);
        }
    }

    public void Bind(int at, long? number)
    {
        if (_numberBound[at] && _numbers[at] == number)
        {
            return;
        }

        _numberBound[at] = true;
        _numbers[at] = number;
        if (number is { } value)
        {
            raw.sqlite3_bind_int64(statement, at, value);
        }
        else
        {
            raw.sqlite3_bind_null(statement, at);
        }
    }

    /// <summary>Writes the instant as <see cref="DapperTypes.InstantText"/> would.</summary>
    public void BindInstant(int at, DateTimeOffset? instant)
    {
        if (instant is not { } value)
        {
            raw.sqlite3_bind_null(statement, at);
            return;
        }

        var utc = value.UtcDateTime;
        Span<byte> text = stackalloc byte["yyyy-MM-ddTHH:mm:ss.fffZ".Length];
        "0000-00-00T00:00:00.000Z"u8.CopyTo(text);
        Digits(text[..4], utc.Year);
        Digits(text[5..7], utc.Month);
        Digits(text[8..10], utc.Day);
        Digits(text[11..13], utc.Hour);
        Digits(text[14..16], utc.Minute);
        Digits(text[17..19], utc.Second);
        Digits(text[20..23], utc.Millisecond);
        raw.sqlite3_bind_text(statement, at, text);
    }

    private static void Digits(Span<byte> place, int number)
    {
        for (var index = place.Length - 1; index >= 0; index--)
        {
            place[index] = (byte)('0' + (number % 10));
            number /= 10;
        }
    }
}
