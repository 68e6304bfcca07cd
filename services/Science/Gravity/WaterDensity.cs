using LabPipeline.Science.Units;

namespace LabPipeline.Science.Gravity;

/// <summary>Density of air-free water at 101.325 kPa.</summary>
/// <remarks>
/// rho = a5 [1 - (t + a1)² (t + a2) / (a3 (t + a4))], 0 to 40 °C, standard uncertainty below 0.001 kg/m³; tap water differs more than that.
/// Source: Tanaka, Girard, Davis, Peuto, Bignell 2001, Metrologia 38:301-309, recommended by CIPM (coefficients from memory; 998.2067 kg/m³ at 20 °C agrees).
/// </remarks>
public static class WaterDensity
{
    private const double A1 = -3.983035;
    private const double A2 = 301.797;
    private const double A3 = 522528.9;
    private const double A4 = 69.34881;
    private const double A5 = 999.974950;

    /// <summary>Density in kg/m³.</summary>
    /// <param name="celsius">Temperature, 0 to 40 °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range of the formula, or NaN.</exception>
    public static double KilogramsPerCubicMetre(double celsius)
    {
        var t = Require.Between(celsius, 0d, 40d, nameof(celsius));
        return A5 * (1 - ((t + A1) * (t + A1) * (t + A2) / (A3 * (t + A4))));
    }
}
