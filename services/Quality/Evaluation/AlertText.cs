namespace LabPipeline.Quality.Evaluation;

/// <summary>Sentences as the warehouse has room for them.</summary>
internal static class AlertText
{
    /// <summary>Width of headline and advice.</summary>
    private const int Longest = 1000;

    private const string Cut = " ...";

    public static string Fit(string text) => text.Length <= Longest ? text : text[..(Longest - Cut.Length)] + Cut;
}
