using System.Buffers;
using System.Text;

namespace LabPipeline.Warehouse.Facts;

/// <summary>Facts of one table on their way into SQLite. Each has its identifier before it is inserted, so that identifiers rise with the file whatever becomes of its rows.</summary>
internal sealed class SqliteFactBatch
{
    public const int Size = 256;

    private const int OnStack = 512;

    private readonly (long Run, NewFact Fact)[] _facts = new (long Run, NewFact Fact)[Size];
    private readonly TextShelf _texts = TextShelf.For(Size);

    public int Count { get; private set; }

    public long FirstId { get; private set; }

    /// <summary>The facts a statement sees.</summary>
    public Range Open { get; private set; }

    public ref readonly (long Run, NewFact Fact) this[int row] => ref _facts[row];

    /// <summary>Empty, for facts from identifier <paramref name="firstId"/> on.</summary>
    public void Begin(long firstId)
    {
        Clear();
        FirstId = firstId;
    }

    public void Add(long run, in NewFact fact) => _facts[Count++] = (run, fact.On(_texts));

    public void OpenAll() => Open = ..Count;

    public void OpenOnly(int row) => Open = row..(row + 1);

    /// <summary>Makes room for the next facts of the file.</summary>
    public void Clear()
    {
        FirstId += Count;
        Count = 0;
        _texts.Clear();
    }

    /// <summary>Hands SQLite the value of one column; a column that has none stays null.</summary>
    public void Give(nint context, int row, int column)
    {
        ref readonly var entry = ref _facts[row];
        ref readonly var fact = ref entry.Fact;
        switch (column)
        {
            case 0: SqliteNative.Give(context, FirstId + row); break;
            case 1: SqliteNative.Give(context, entry.Run); break;
            case 2: GiveKey(context, fact.RowKey.Span); break;
            case 3: SqliteNative.Give(context, fact.QuantityId); break;
            case 4: GiveText(context, fact.Barcode); break;
            case 5: GiveText(context, fact.Material); break;
            case 6: SqliteNative.Give(context, (double)fact.Value); break;
            case 7: SqliteNative.Give(context, fact.BelowLimit ? 1 : 0); break;
            case 8: GiveText(context, fact.RawValue); break;
            case 9: GiveText(context, fact.RawUnit); break;
            case 10: GiveText(context, fact.Extract); break;
            case 11: GiveCount(context, fact.Replicate); break;
            case 12: GiveCount(context, fact.Tuber); break;
            case 13: GiveCount(context, fact.Slice); break;
            case 14: GiveText(context, fact.Operator); break;
            case 15: GiveInstant(context, fact.MeasuredAt); break;
            case 16: GiveText(context, fact.MeasuredAs); break;
            default: SqliteNative.Give(context, fact.Line); break;
        }
    }

    private static void GiveKey(nint context, ReadOnlySpan<char> key)
    {
        if (SqliteRowKey.TryNumber(key, out var number))
        {
            SqliteNative.Give(context, number);
        }
        else
        {
            GiveCharacters(context, key);
        }
    }

    private static void GiveCount(nint context, int? count)
    {
        if (count is { } number)
        {
            SqliteNative.Give(context, number);
        }
    }

    private static void GiveText(nint context, string? text)
    {
        if (text is not null)
        {
            GiveCharacters(context, text);
        }
    }

    private static void GiveText(nint context, PassingText text)
    {
        if (text.Exists)
        {
            GiveCharacters(context, text.Span);
        }
    }

    private static void GiveCharacters(nint context, ReadOnlySpan<char> text)
    {
        var longest = Encoding.UTF8.GetMaxByteCount(text.Length);
        var rented = longest > OnStack ? ArrayPool<byte>.Shared.Rent(longest) : null;
        var buffer = rented ?? stackalloc byte[OnStack];
        SqliteNative.GiveText(context, buffer[..Encoding.UTF8.GetBytes(text, buffer)]);
        if (rented is not null)
        {
            ArrayPool<byte>.Shared.Return(rented);
        }
    }

    /// <summary>Writes the instant as <see cref="DapperTypes.InstantText"/> would.</summary>
    private static void GiveInstant(nint context, DateTimeOffset? instant)
    {
        if (instant is not { } value)
        {
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
        SqliteNative.GiveText(context, text);
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
