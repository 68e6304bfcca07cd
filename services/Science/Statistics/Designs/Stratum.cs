namespace LabPipeline.Science.Statistics.Designs;

/// <summary>An error stratum: a size of experimental unit with its own variation.</summary>
/// <param name="Name">Name of the unit ("block", "block:irrigation"), or <see cref="Within"/>.</param>
/// <param name="Df">All degrees of freedom of the stratum, treatments included.</param>
/// <param name="ResidualDf">Those left after the treatments.</param>
/// <param name="ResidualSumOfSquares">Squared units of the response.</param>
public sealed record Stratum(string Name, int Df, int ResidualDf, double ResidualSumOfSquares)
{
    /// <summary>Name of the last stratum: single rows within the smallest named unit.</summary>
    public const string Within = "Within";

    /// <summary>ResidualSumOfSquares / ResidualDf; null where no degrees of freedom are left.</summary>
    public double? ResidualMeanSquare => ResidualDf > 0 ? ResidualSumOfSquares / ResidualDf : null;
}
