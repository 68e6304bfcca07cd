namespace LabPipeline.Reporting.Season;

/// <summary>How well differences of the means of a table are known, on the scale of analysis.</summary>
/// <param name="SmallestSed">Smallest standard error of a difference.</param>
/// <param name="LargestSed">Largest; the same where all pairs are alike.</param>
/// <param name="Df">Degrees of freedom of the largest.</param>
/// <param name="Lsd">Least significant difference at the level, from the largest SED.</param>
/// <param name="Hsd">Tukey's critical difference for all pairs, from the largest SED.</param>
internal sealed record MeansPrecision(double SmallestSed, double LargestSed, double Df, double Lsd, double Hsd);
