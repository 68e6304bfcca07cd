using System.Net;
using System.Text.RegularExpressions;

namespace LabPipeline.Board.Tests;

/// <summary>What a reader sees of a page: no tags, entities resolved, one space between pieces.</summary>
internal static partial class PageText
{
    public static string Of(string page) => Spaces().Replace(WebUtility.HtmlDecode(Tags().Replace(page, " ")), " ");

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
