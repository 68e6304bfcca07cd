using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Text;

namespace LabPipeline.Intake.Reading;

/// <summary>The texts a profile declares to be no values, and how often each was met.</summary>
internal sealed class MissingTexts
{
    private readonly string[] _texts;
    private readonly long[] _counts;
    private readonly NumberPlaceholder[] _numbers;
    private readonly Placeholder[] _placeholders;

    public MissingTexts(Profile profile)
    {
        _placeholders = [.. profile.Placeholders];
        _texts = [.. profile.MissingTexts, .. profile.Placeholders.Select(placeholder => placeholder.Text)];
        _counts = new long[_texts.Length];
        _numbers =
        [
            .. _placeholders.Select((placeholder, index) => (
                    Fault: NumberGrammar.Parse(placeholder.Text, profile.Text.Numbers, out var number), Number: number, Index: index))
                .Where(entry => entry.Fault == NumberFault.None)
                .Select(entry => new NumberPlaceholder(entry.Number, profile.MissingTexts.Count + entry.Index)),
        ];
    }

    private int Declared => _texts.Length - _placeholders.Length;

    /// <summary>Number of the text equal to <paramref name="text"/>, or -1.</summary>
    public int Find(ReadOnlySpan<char> text)
    {
        for (var index = 0; index < _texts.Length; index++)
        {
            if (text.SequenceEqual(_texts[index]))
            {
                return index;
            }
        }

        return -1;
    }

    /// <summary>Number of the placeholder equal to <paramref name="value"/> as the file writes it, or -1: 9999.0 is 9999.</summary>
    public int Find(decimal value)
    {
        foreach (var placeholder in _numbers)
        {
            if (placeholder.Value == value)
            {
                return placeholder.Index;
            }
        }

        return -1;
    }

    public bool IsRefused(int index) => index >= Declared && !_placeholders[index - Declared].CountsAsMissing;

    public void Count(int index) => _counts[index]++;

    public IReadOnlyDictionary<string, long> Counted() => _texts.Zip(_counts)
        .Where(pair => pair.Second > 0)
        .ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal);

    private readonly record struct NumberPlaceholder(decimal Value, int Index);
}
