namespace LabPipeline.Intake.Reading;

/// <summary>One string for every text that repeats in a file; bounded, so a column that never repeats costs no memory.</summary>
internal sealed class TextPool
{
    private const int Capacity = 4096;

    private readonly HashSet<string> _texts = new(StringComparer.Ordinal);
    private readonly HashSet<string>.AlternateLookup<ReadOnlySpan<char>> _lookup;

    public TextPool() => _lookup = _texts.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>The pooled string of <c>text</c>; <c>last</c> is that of the row before, most often the same.</summary>
    public string Get(ReadOnlySpan<char> text, ref string last)
    {
        if (!text.SequenceEqual(last))
        {
            last = Find(text);
        }

        return last;
    }

    private string Find(ReadOnlySpan<char> text)
    {
        if (_lookup.TryGetValue(text, out var known))
        {
            return known;
        }

        var added = text.ToString();
        if (_texts.Count < Capacity)
        {
            _texts.Add(added);
        }

        return added;
    }
}
