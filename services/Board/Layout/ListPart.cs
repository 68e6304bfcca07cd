using System.Globalization;

namespace LabPipeline.Board.Layout;

/// <summary>Which part of a long list a page shows.</summary>
/// <param name="Number">The part, counted from 1.</param>
/// <param name="Size">Rows of a whole part.</param>
/// <param name="Total">Rows of the list.</param>
public sealed record ListPart(int Number, int Size, int Total)
{
    public int Last => Math.Max(1, (Total + Size - 1) / Size);

    public int Skip => (Number - 1) * Size;

    /// <summary>The part an address asks for; the first when it asks for none.</summary>
    /// <returns>Null when <paramref name="asked"/> is no number of a part of the list.</returns>
    public static ListPart? Of(string? asked, int size, int total)
    {
        var first = new ListPart(1, size, total);
        if (string.IsNullOrEmpty(asked))
        {
            return first;
        }

        return int.TryParse(asked, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= first.Last
            ? first with { Number = number }
            : null;
    }
}
