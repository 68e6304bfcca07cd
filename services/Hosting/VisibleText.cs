using System.Globalization;
using System.Text;

namespace LabPipeline.Hosting;

/// <summary>Text from outside made safe to show on one line: characters that show nothing, or change what is shown around them, are spelled out.</summary>
/// <remarks>A cell or a file name can hold line breaks, terminal escapes, marks that reverse text, or megabytes; a log line, a mail's header or a page must not.</remarks>
public static class VisibleText
{
    /// <summary>Longest piece of a file's text that is shown in a sentence.</summary>
    public const int InSentence = 60;

    private const string Cut = "...";

    /// <summary>A piece of a file for a sentence about it.</summary>
    public static string Of(ReadOnlySpan<char> text) => Of(text, InSentence, Cut);

    /// <param name="text">Any text.</param>
    /// <param name="longest">Most characters to show; no character is split.</param>
    /// <param name="cut">Stands for the rest of a longer one.</param>
    public static string Of(ReadOnlySpan<char> text, int longest, string cut = Cut)
    {
        if (text.Length <= longest && IsVisible(text))
        {
            return text.ToString();
        }

        var visible = new StringBuilder(Math.Min(text.Length + 8, longest));
        while (!text.IsEmpty)
        {
            var isPair = text.Length > 1 && char.IsSurrogatePair(text[0], text[1]);
            var spelled = isPair || !IsHidden(text[0]) ? null : Spell(text[0]);
            var length = isPair ? 2 : 1;
            if (visible.Length + (spelled?.Length ?? length) > longest)
            {
                return visible.Append(cut).ToString();
            }

            _ = spelled is null ? visible.Append(text[..length]) : visible.Append(spelled);
            text = text[length..];
        }

        return visible.ToString();
    }

    /// <summary>Whether the text can be shown as it is.</summary>
    public static bool IsVisible(ReadOnlySpan<char> text)
    {
        foreach (var symbol in text)
        {
            if (IsHidden(symbol))
            {
                return false;
            }
        }

        return true;
    }

    private static string Spell(char symbol) => symbol switch
    {
        '\t' => "\\t",
        '\r' => "\\r",
        '\n' => "\\n",
        _ => string.Create(CultureInfo.InvariantCulture, $"\\u{(int)symbol:X4}"),
    };

    // Format covers the marks that reverse or hide text; half a character cannot be encoded at all.
    private static bool IsHidden(char symbol) => char.GetUnicodeCategory(symbol) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator
        or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Surrogate or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned;
}
