using System.Globalization;
using System.Text;

namespace LabPipeline.Intake.Text;

/// <summary>Text from a file made safe to show: shortened, with control and direction characters spelled out.</summary>
/// <remarks>A cell can hold line breaks, terminal escapes or megabytes; a log line, mail or page must not.</remarks>
public static class VisibleText
{
    /// <summary>Most characters of a file's text that are ever shown.</summary>
    public const int MaxLength = 60;

    public static string Of(ReadOnlySpan<char> text)
    {
        var shown = text.Length <= MaxLength ? text : text[..MaxLength];
        if (shown.Length > 0 && shown.Length < text.Length && char.IsHighSurrogate(shown[^1]))
        {
            shown = shown[..^1];
        }

        var visible = new StringBuilder(shown.Length + 8);
        for (var index = 0; index < shown.Length; index++)
        {
            Append(visible, shown[index]);
        }

        return shown.Length < text.Length ? visible.Append("...").ToString() : visible.ToString();
    }

    private static void Append(StringBuilder visible, char symbol)
    {
        switch (symbol)
        {
            case '\t':
                visible.Append("\\t");
                break;
            case '\r':
                visible.Append("\\r");
                break;
            case '\n':
                visible.Append("\\n");
                break;
            default:
                if (IsHidden(symbol))
                {
                    visible.Append(CultureInfo.InvariantCulture, $"\\u{(int)symbol:X4}");
                }
                else
                {
                    visible.Append(symbol);
                }

                break;
        }
    }

    private static bool IsHidden(char symbol) => char.GetUnicodeCategory(symbol) is UnicodeCategory.Control or UnicodeCategory.Format
        or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned;
}
