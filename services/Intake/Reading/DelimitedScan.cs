using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace LabPipeline.Intake.Reading;

/// <summary>Finds the cells of one delimited row in the characters ahead.</summary>
internal sealed class DelimitedScan(char delimiter, char? quote, int mostColumns)
{
    // U+FFFF is no character: when quotes are ordinary characters, nothing is one.
    private readonly char _quote = quote ?? '\uFFFF';
    private readonly Vector256<ushort> _delimiters = Vector256.Create((ushort)delimiter);
    private readonly Vector256<ushort> _quotes = Vector256.Create((ushort)(quote ?? '\uFFFF'));
    private readonly Vector256<ushort> _lineEnds = Vector256.Create((ushort)'\n');
    private DelimitedCell[] _cells = new DelimitedCell[16];

    /// <summary>Number of cells of the row.</summary>
    public int Count { get; private set; }

    /// <summary>Number of characters of the row, its line end included.</summary>
    public int Length { get; private set; }

    public int LineEnds { get; private set; }

    public ref DelimitedCell Cell(int column) => ref _cells[column];

    /// <summary>Divides the row at the beginning of <paramref name="text"/>; <paramref name="last"/> when nothing will follow it.</summary>
    public RowScan Scan(ReadOnlySpan<char> text, bool last)
    {
        if (ScanBare(text))
        {
            return RowScan.Row;
        }

        Count = 0;
        LineEnds = 0;
        var position = 0;
        while (true)
        {
            var scan = position < text.Length && text[position] == _quote
                ? ScanQuoted(text, ref position, last)
                : ScanPlain(text, ref position, last);
            if (scan != RowScan.Row)
            {
                return scan;
            }

            if (position == text.Length || text[position] == '\n')
            {
                LineEnds += position < text.Length ? 1 : 0;
                Length = Math.Min(position + 1, text.Length);
                return RowScan.Row;
            }

            position++;
        }
    }

    /// <summary>Divides a row that has no quote and ends well within the text, sixteen characters at once; leaves every other one alone.</summary>
    private bool ScanBare(ReadOnlySpan<char> text)
    {
        Count = 0;
        var start = 0;
        ref var first = ref MemoryMarshal.GetReference(MemoryMarshal.Cast<char, ushort>(text));
        for (var block = 0; block <= text.Length - Vector256<ushort>.Count; block += Vector256<ushort>.Count)
        {
            var symbols = Vector256.LoadUnsafe(ref first, (nuint)block);
            var marks = (Vector256.Equals(symbols, _delimiters) | Vector256.Equals(symbols, _lineEnds) | Vector256.Equals(symbols, _quotes)).ExtractMostSignificantBits();
            for (; marks != 0; marks &= marks - 1)
            {
                var position = block + BitOperations.TrailingZeroCount(marks);
                if (text[position] == _quote || Count == mostColumns || Count == _cells.Length)
                {
                    return false;
                }

                _cells[Count++] = new DelimitedCell(start, position - start, false);
                start = position + 1;
                if (text[position] == '\n')
                {
                    (Length, LineEnds) = (start, 1);
                    return true;
                }
            }
        }

        return false;
    }

    private RowScan ScanPlain(ReadOnlySpan<char> text, ref int position, bool last)
    {
        var length = text[position..].IndexOfAny(delimiter, _quote, '\n');
        if (length < 0)
        {
            if (!last)
            {
                return RowScan.More;
            }

            length = text.Length - position;
        }
        else if (text[position + length] == _quote)
        {
            return RowScan.MisplacedQuote;
        }

        var start = position;
        position += length;
        return Add(new DelimitedCell(start, length, false));
    }

    private RowScan ScanQuoted(ReadOnlySpan<char> text, ref int position, bool last)
    {
        var start = position + 1;
        var scan = FindClosing(text, start, last, out var end, out var escaped);
        if (scan != RowScan.Row)
        {
            return scan;
        }

        var next = end + 1;
        if (next < text.Length && text[next] == '\r')
        {
            next++;
        }

        if (next == text.Length && !last)
        {
            return RowScan.More;
        }

        if (next < text.Length && text[next] != delimiter && text[next] != '\n')
        {
            return RowScan.MisplacedQuote;
        }

        LineEnds += text[start..end].Count('\n');
        position = next;
        return Add(new DelimitedCell(start, end - start, escaped));
    }

    private RowScan FindClosing(ReadOnlySpan<char> text, int start, bool last, out int end, out bool escaped)
    {
        escaped = false;
        end = start;
        while (true)
        {
            var found = text[end..].IndexOf(_quote);
            if (found < 0)
            {
                return last ? RowScan.UnclosedQuote : RowScan.OpenQuote;
            }

            end += found;
            if (end + 1 == text.Length && !last)
            {
                return RowScan.OpenQuote;
            }

            if (end + 1 == text.Length || text[end + 1] != _quote)
            {
                return RowScan.Row;
            }

            escaped = true;
            end += 2;
        }
    }

    private RowScan Add(DelimitedCell cell)
    {
        if (Count == mostColumns)
        {
            return RowScan.TooManyColumns;
        }

        if (Count == _cells.Length)
        {
            Array.Resize(ref _cells, _cells.Length * 2);
        }

        _cells[Count++] = cell;
        return RowScan.Row;
    }
}
