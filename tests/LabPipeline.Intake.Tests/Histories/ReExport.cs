using System.Globalization;

namespace LabPipeline.Intake.Tests.Histories;

/// <summary>What an instrument makes of a file when it exports the same run again.</summary>
internal static class ReExport
{
    private const int MostKeys = 9;

    /// <summary>A row more, under a key the file has not yet.</summary>
    public static string WithARowMore(string text)
    {
        var keys = text.Split('\n').Select(line => line.Split(',')).Where(cells => cells.Length == 5).Select(cells => cells[2]).ToHashSet();
        var next = Enumerable.Range(1, MostKeys).Select(key => key.ToString(CultureInfo.InvariantCulture)).FirstOrDefault(key => !keys.Contains(key));
        return next is null ? text : text + HistoryFile.Row(next, "0.1");
    }

    /// <summary>Another value in the last row, where it has one.</summary>
    public static string WithAnotherValue(string text) => text.Length > 2 && text[^2] is >= '1' and <= '3' and var digit
        ? string.Create(CultureInfo.InvariantCulture, $"{text[..^2]}{((digit - '0') % 3) + 1}\n")
        : text;
}
