using System.Globalization;
using System.Text.Json;

namespace LabPipeline.Board.Samples;

/// <summary>Lists of reading numbers, short enough for a table cell.</summary>
internal static class NumberRanges
{
    /// <summary><c>[4,5,6,9]</c> as <c>4–6, 9</c>.</summary>
    /// <param name="json">A sorted JSON array of whole numbers; anything else comes back as it is.</param>
    public static string Of(string json)
    {
        long[]? numbers;
        try
        {
            numbers = JsonSerializer.Deserialize<long[]>(json);
        }
        catch (JsonException)
        {
            return json;
        }

        var parts = new List<string>();
        for (var first = 0; first < (numbers?.Length ?? 0);)
        {
            var last = first;
            while (last + 1 < numbers!.Length && numbers[last + 1] == numbers[last] + 1)
            {
                last++;
            }

            parts.Add(Text(numbers[first]) + (last == first ? "" : "–" + Text(numbers[last])));
            first = last + 1;
        }

        return string.Join(", ", parts);
    }

    private static string Text(long number) => number.ToString(CultureInfo.InvariantCulture);
}
