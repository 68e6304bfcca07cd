namespace LabPipeline.Science.Statistics.Comparisons;

/// <summary>Which mean gets the letter a.</summary>
public enum LetterOrder
{
    /// <summary>The highest mean, as for yield.</summary>
    HighestFirst,

    /// <summary>The lowest mean, where low is best, as for reducing sugars.</summary>
    LowestFirst,
}
