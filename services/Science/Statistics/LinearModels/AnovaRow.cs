namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>One line of an analysis of variance.</summary>
public sealed record AnovaRow
{
    /// <summary>Name of the residual line of a stratum or table.</summary>
    public const string Residual = "Residual";

    /// <summary>Error stratum the line belongs to; empty in a table with one error.</summary>
    public required string Stratum { get; init; }

    public required string Term { get; init; }

    /// <summary>Numerator degrees of freedom.</summary>
    public required int Df { get; init; }

    /// <summary>Sum of squares, in squared units of the response; null in a table of REML tests, which has none.</summary>
    public double? SumOfSquares { get; init; }

    /// <summary>SumOfSquares / Df.</summary>
    public double? MeanSquare => SumOfSquares / Df;

    /// <summary>Null where the line is not tested; <see cref="NotTested"/> then says why, unless it is a residual.</summary>
    public double? F { get; init; }

    /// <summary>Denominator degrees of freedom; fractional under Satterthwaite, Kenward-Roger or a sphericity correction.</summary>
    public double? DenominatorDf { get; init; }

    /// <summary>Upper tail of F(Df, DenominatorDf) beyond the F found.</summary>
    public double? P { get; init; }

    /// <summary>The error the line was tested against, in words.</summary>
    public string? TestedAgainst { get; init; }

    public string? NotTested { get; init; }
}
