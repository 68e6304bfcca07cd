namespace LabPipeline.Intake.Profiles;

/// <summary>Reads "files".</summary>
internal static class FileSection
{
    private const int ADay = 86_400;

    public static FileRule Read(ProfileNode node, TextLayout layout)
    {
        var match = node.Texts("match", required: true);
        for (var index = 0; index < match.Count; index++)
        {
            if (match[index].AsSpan().IndexOfAny('/', '\\') >= 0)
            {
                node.Fault($"match[{index}]", $"'{match[index]}'", "a file name without folder; * and ? stand for any characters and one");
            }
        }

        var complete = node.Choice("complete", ProfileWords.Completeness);
        var trailer = Trailer(node, complete, layout);
        var quiet = node.Whole("quietSeconds", complete == Completeness.FinalNewline ? 1 : 0, ADay, complete == Completeness.FinalNewline ? null : 0);
        node.Close();
        return new FileRule(match, complete, trailer, quiet);
    }

    private static string? Trailer(ProfileNode node, Completeness complete, TextLayout layout)
    {
        if (complete != Completeness.Trailer)
        {
            return null;
        }

        // Colour text brings its own last line.
        return layout == TextLayout.Cgats ? "END_DATA" : node.Text("trailer");
    }
}
