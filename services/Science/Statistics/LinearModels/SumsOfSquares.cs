namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>Which sum of squares a term is given; all agree where the data are balanced.</summary>
public enum SumsOfSquares
{
    /// <summary>Type I: each term after those written before it.</summary>
    Sequential,

    /// <summary>Type II: each term after all others that do not contain it.</summary>
    TypeTwo,

    /// <summary>Type III: each term after all others, factors coded to sum to zero; tests equality of the adjusted means.</summary>
    TypeThree,
}
