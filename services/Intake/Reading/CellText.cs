namespace LabPipeline.Intake.Reading;

internal static class CellText
{
    /// <summary>Takes blanks, tabs and the carriage return of a line end or a scanner off both ends; other white space may mean something.</summary>
    public static ReadOnlySpan<char> Trim(ReadOnlySpan<char> text)
    {
        if (text.Length > 0 && text[0] > ' ' && text[^1] > ' ')
        {
            return text;
        }

        var start = 0;
        var end = text.Length;
        while (start < end && IsBlank(text[start]))
        {
            start++;
        }

        while (end > start && IsBlank(text[end - 1]))
        {
            end--;
        }

        return text[start..end];
    }

    private static bool IsBlank(char symbol) => symbol is ' ' or '\t' or '\r' or '\n';
}
