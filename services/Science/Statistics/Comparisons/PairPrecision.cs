namespace LabPipeline.Science.Statistics.Comparisons;

/// <summary>How well the difference of one pair of means is known.</summary>
/// <param name="Sed">Standard error of the difference, in the unit of the response, above 0.</param>
/// <param name="Df">Its degrees of freedom (Satterthwaite or Kenward-Roger ones need not be whole), infinity allowed.</param>
public readonly record struct PairPrecision(double Sed, double Df);
