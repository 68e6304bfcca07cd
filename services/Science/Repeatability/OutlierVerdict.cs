namespace LabPipeline.Science.Repeatability;

/// <summary>Outcome of an outlier test. A flag starts an enquiry; it is no reason to leave a value out.</summary>
/// <param name="Index">Index of the suspect value or group, from 0.</param>
/// <param name="Statistic">Test statistic, dimensionless.</param>
/// <param name="CriticalValue">What it was compared with.</param>
public sealed record OutlierVerdict(int Index, double Statistic, double CriticalValue)
{
    /// <summary>Whether the value is flagged: strictly beyond the critical value.</summary>
    public bool IsFlagged => Statistic > CriticalValue;
}
