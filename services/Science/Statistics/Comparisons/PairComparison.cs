namespace LabPipeline.Science.Statistics.Comparisons;

/// <summary>The difference of two means, judged.</summary>
/// <param name="First">Position of the mean the difference starts from.</param>
/// <param name="Second">Position of the mean taken from it.</param>
/// <param name="Name">"A - B".</param>
/// <param name="Difference">First less second, in the unit of the response.</param>
/// <param name="Sed">Standard error of the difference.</param>
/// <param name="Df">Degrees of freedom of that standard error.</param>
/// <param name="Statistic">Studentised range q for Tukey, t for all others.</param>
/// <param name="P">p value, adjusted as the procedure says.</param>
/// <param name="Low">Lower end of the interval of the difference; minus infinity for a one-sided claim.</param>
/// <param name="High">Upper end of the interval of the difference; infinity for a one-sided claim.</param>
public sealed record PairComparison(
    int First, int Second, string Name, double Difference, double Sed, double Df, double Statistic, double P, double Low, double High);
