namespace LabPipeline.Warehouse.Facts;

/// <summary>Keeps the passing texts of a batch in one buffer, which the next batch uses again.</summary>
/// <param name="room">How many characters it holds without growing.</param>
public sealed class TextShelf(int room)
{
    // What the texts of one fact usually have together, in characters.
    private const int UsualText = 48;

    private char[] _characters = new char[room];
    private int _used;

    /// <summary>A shelf for the texts of so many facts.</summary>
    public static TextShelf For(int facts) => new(facts * UsualText);

    /// <summary>The same text, valid until <see cref="Clear"/>.</summary>
    public PassingText Keep(PassingText text) => text.Exists ? Keep(text.Span) : default;

    public PassingText Keep(ReadOnlySpan<char> text)
    {
        if (_used + text.Length > _characters.Length)
        {
            // Texts given out before stay where they are, in the buffer before.
            _characters = new char[Math.Max(_characters.Length * 2, text.Length)];
            _used = 0;
        }

        var place = _characters.AsMemory(_used, text.Length);
        text.CopyTo(place.Span);
        _used += text.Length;
        return new PassingText(place);
    }

    public void Clear() => _used = 0;
}
