namespace LabPipeline.Warehouse.Facts;

/// <summary>A text that may stand in a buffer which its giver uses again: who needs it longer than the call takes <see cref="Kept"/>.</summary>
/// <remarks>A large file has three texts of its own in every row; as strings they would be most of what a load leaves to the collector.</remarks>
public readonly struct PassingText : IEquatable<PassingText>
{
    private readonly ReadOnlyMemory<char> _characters;

    public PassingText(ReadOnlyMemory<char> characters)
    {
        _characters = characters;
        Exists = true;
    }

    /// <summary>False where there is no text, which is not the same as an empty one.</summary>
    public bool Exists { get; }

    public int Length => _characters.Length;

    public ReadOnlySpan<char> Span => _characters.Span;

    public static implicit operator PassingText(string? text) => text is null ? default : new(text.AsMemory());

    public static bool operator ==(PassingText one, PassingText other) => one.Equals(other);

    public static bool operator !=(PassingText one, PassingText other) => !one.Equals(other);

    /// <summary>The same text in a string of its own.</summary>
    public PassingText Kept() => Text;

    /// <summary>The text as a string; null where there is none.</summary>
    public string? Text => Exists ? _characters.ToString() : null;

    public override string ToString() => _characters.ToString();

    public bool Equals(PassingText other) => Exists == other.Exists && Span.SequenceEqual(other.Span);

    public override bool Equals(object? obj) => obj is PassingText other && Equals(other);

    public override int GetHashCode() => string.GetHashCode(Span);
}
